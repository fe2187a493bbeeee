// not-on-subject: a follow needs the focus on whom it follows.

package interp

import (
	"fmt"
	"math"
	"slices"

	"pullscore/lang"
)

func checkNotOnSubject(b *builder) {
	for _, p := range b.pulls {
		if q := b.clock.writtenBefore(p); !p.follow || q != nil && q.failed {
			continue
		}
		before := b.goalBefore(p)
		d := lang.Diagnostic{
			Code: "not-on-subject", Severity: lang.Error,
			Detail: fmt.Sprintf("Rack to %s first.", p.to()),
		}
		if !slices.Contains(before.members(), p.goal.subject) {
			d.Message = fmt.Sprintf("the focus is on %s, and cannot follow %s", before.text, p.to())
			b.tellPull(p, finding{Diagnostic: d})
			continue
		}
		x, at := b.focusBefore(p, p.start), b.lensDistance(&p.goal, p.start)
		if lo, hi := b.shot.Setting(p.start).Window(at); (x < lo || x > hi) && before.split == nil {
			gone := b.shot.ToTape(at, p.start) - b.shot.ToTape(x, p.start)
			d.Message = fmt.Sprintf("%s has gone %s since the focus landed, and is no longer sharp where the follow starts", p.to(), metres(math.Abs(gone)))
			d.Figures = []lang.Figure{figure("gone_m", gone)}
			b.tellPull(p, finding{Diagnostic: d})
		}
	}
}
