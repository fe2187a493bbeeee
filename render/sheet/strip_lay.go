package sheet

// NumberMost is the longest list of numbers, in millimetres.
const NumberMost = 16.0
