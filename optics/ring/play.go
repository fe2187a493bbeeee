// Play: the slack of a gear, between the hand and the ring.
//
// Where a wheel turns back, it turns by its play before the ring moves. So a mark on the
// wheel holds for the way from which it was come to: a landing that goes the same way
// loses nothing, one the other way stays the whole play short. The model is our own; that
// marks are always come to from one side is common practice.

package ring

// A Way is the way that the marks on a ring were come to.
type Way int

// The ways.
const (
	WayUnknown Way = iota // nobody says: half of the play is counted
	ToInf                 // turning towards infinity
	ToClosest             // turning towards the closest stop
	BothWays              // every mark has one for each way
)

// PlayShift returns by how many degrees a landing stays short of its mark, along its
// travel, with a play in degrees.
func PlayShift(play float64, towardsInf bool, marked Way) float64 {
	switch {
	case marked == BothWays, marked == ToInf && towardsInf, marked == ToClosest && !towardsInf:
		return 0
	case marked == WayUnknown:
		return play / 2
	}
	return play
}

// Gear returns how many degrees a hand wheel turns for one degree of the ring, if its
// travel between two stops is mapped to the part of the ring between two angles. All are
// in degrees.
func Gear(travel, from, to float64) float64 { return travel / (to - from) }

// PlayTravel returns by how many degrees more the hand turns where it turns back: the play
// of the ring in degrees, times the gear.
func PlayTravel(play, gear float64) float64 { return play * gear }
