// The clips that show a shot: what its statements say, and what was taken.

package shot

import (
	"fmt"

	"pullscore/interp/edit"
	"pullscore/interp/names"
	"pullscore/lang"
)

// checkClip tells what is wrong in the timecodes of a clip statement. The cuts were read
// before, with those that can be read.
func (b *builder) checkClip(s *lang.Clip) {
	if s.From == nil || s.To == nil {
		return
	}
	from, ok := b.Want(s.From, names.DimTimecode)
	to, okToo := b.Want(s.To, names.DimTimecode)
	if ok && okToo && from >= to {
		b.Report(lang.Diagnostic{
			Code: "out-of-range", Severity: lang.Error, Range: s.To.Range(),
			Message: "this is not behind the timecode from which it counts",
		})
	}
}

// tellClips lists the clips of other names than the shot's that were taken for it.
func (b *builder) tellClips() {
	if b.Cut == nil || b.Cut.List == nil {
		return
	}
	told := map[string]bool{}
	for i := range b.Cut.Events {
		e := &b.Cut.Events[i]
		if e.Named || told[e.Name] || edit.Fold(e.Name) == edit.Fold(b.Head.ID) {
			continue
		}
		told[e.Name] = true
		value := e.Name
		if e.Take != "" {
			value += ", take " + e.Take
		}
		b.byDefault("clip", value, fmt.Sprintf("in %s", b.Cut.List.Base()))
	}
}
