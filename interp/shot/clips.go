// The clips that show a shot: what its statements say, and what was taken.

package shot

import (
	"pullscore/interp/names"
	"pullscore/lang"
)

// checkClip tells what is wrong in the timecodes of a clip statement: the cuts were read
// before, with those that can be read.
func (b *builder) checkClip(s *lang.Clip) {
	if s.From == nil || s.To == nil {
		return
	}
	from, ok := b.Want(s.From, names.DimTimecode)
	to, known := b.Want(s.To, names.DimTimecode)
	if ok && known && to <= from {
		b.Fail(s.To.Range(), "out-of-range", "the source of this clip does not end after it begins",
			"A clip counts if its source begins at the first timecode or later, and before the second. Exchange the two, or correct one.")
	}
}
