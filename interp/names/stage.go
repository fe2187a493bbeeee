package names

// MaxDistance is beyond any focus mark; farther is infinity.
const MaxDistance = 1e6 // m
