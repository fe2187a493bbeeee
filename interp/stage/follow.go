package stage

// A Shift is a move that changes the distance of someone who is followed, by d
// metres away from the camera.
type Shift struct {
	Start, End, D float64
	Smooth        bool
}
