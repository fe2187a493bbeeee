package plan

// Inch is the inch in metres, exact (international yard and pound agreement, 1959).
// InchesPerFoot is the number of inches in a foot.
const (
	Inch          = 0.0254
	InchesPerFoot = 12
)
