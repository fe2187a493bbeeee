package sheet

const (
	HatchPitch = 1.3
	HatchLeast = 1.5
	LabelTwo   = 6.6  // height of a label of two lines
	LabelOne   = 3.4  // and of one
	NameLow    = 1.55 // from the middle of a label of two lines up to its name's
)
