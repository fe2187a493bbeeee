package sheet

const (
	HeadHeight  = 15.5 // of a page's title
	RulerHeight = 8.2
	KeyHeight   = 6.5
)
