package plan

// Inch is the inch in metres, exact (international yard and pound agreement,
// 1959), and InchesPerFoot what its name says.
const (
	Inch          = 0.0254
	InchesPerFoot = 12
)
