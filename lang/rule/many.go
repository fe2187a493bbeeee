// A group of findings in one clause.

package rule

import "fmt"

// Many says in one clause that there are n findings of a code, such as "8 racks
// do not land often enough in their time"; n is at least 2.
func (c Code) Many(n int) string {
	if text := many(c); text != "" {
		return fmt.Sprintf(text, n)
	}
	return fmt.Sprintf("%d times: %s", n, c.Rule().Means)
}

// many is a switch, so that it costs nothing at the start.
func many(c Code) string {
	switch c {
	case NeverSure:
		return "%d pulls never land often enough, however slowly you pull"
	case HardToLand:
		return "%d pulls do not land often enough in their time"
	case Unmotivated:
		return "%d racks have no cue and no reason"
	case CutsIntoLine:
		return "%d racks leave a speaker within a line"
	case InsideASentence:
		return "%d racks begin inside a sentence"
	case NoTimeToSee:
		return "%d times the focus leaves before the eye has arrived"
	case NotSeen:
		return "the audience does not see %d racks"
	case Faint:
		return "the audience barely sees %d racks"
	case GoesSoft:
		return "%d times somebody moves out of focus, and nothing follows"
	case DriftsSoft:
		return "%d times somebody sways out of what is sharp"
	case HardToFollow:
		return "%d follows are not sharp often enough at their worst"
	case ReGrip:
		return "%d pulls need a re-grip"
	case Jarring:
		return "%d racks are too quick for what they change"
	case NothingSharp:
		return "%d racks leave nothing sharp for over a second"
	case TooDeep:
		return "%d times no setting keeps a whole subject sharp"
	case OutOfFrame:
		return "%d times the focus goes to somebody outside the frame"
	case BeyondMarks:
		return "%d pulls go beyond the marks of the lens"
	case FallsBehind:
		return "%d follows fall behind"
	case Trimmed:
		return "the cut shows %d racks only in part"
	case LineDiffers:
		return "the cut has %d lines in other words"
	case LineNotInEdit:
		return "the cut does not have %d lines"
	}
	return ""
}
