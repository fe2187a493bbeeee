// What a shot is taken to say where it does not: of its clips, its racks, its rig and
// the light that its lens loses.

package shot

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// tellClips lists the clips of other names than the shot's that were taken for it.
func (b *builder) tellClips() {
	if b.Cut != nil && b.Cut.List != nil {
		for _, clip := range b.Cut.Taken() {
			b.byDefault("clip", clip, "in "+b.Cut.List.Base())
		}
	}
}

// untimed lists the time of racks that do not say theirs, among what the plan
// leaves out.
func (b *builder) untimed(pulls []*Pull) {
	n, shortest, longest := 0, math.Inf(1), 0.0
	for _, p := range pulls {
		if p.Plan.Untimed {
			n++
			long := p.Rack.LandS - p.Rack.StartS
			shortest, longest = min(shortest, long), max(longest, long)
		}
	}
	if n == 0 {
		return
	}
	value, who := units.Style{}.Time(shortest), "1 rack does not say it"
	if text := (units.Style{}).Time(longest); text != value {
		value += " to " + text
	}
	if n > 1 {
		who = fmt.Sprintf("%d racks do not say it", n)
	}
	why := ": the shortest that lands with the wanted chance, and 1 s where none does"
	if b.Shot.RingUnknown() {
		why = ": the shortest that lands with the wanted chance on the ring that needs the longest, and 1 s where none does"
	}
	b.byDefault("over", value, who+why)
}

// sayRig lists what a camera that turns or leaves its axis is taken to see where the plan
// does not say it: how far to the side people are, and how high.
func (b *builder) sayRig(out *Built) {
	rig := out.Plan.Optics.Rig
	if rig == nil {
		return
	}
	kinds := map[string]bool{}
	for _, m := range out.Stage.Moves {
		kinds[m.Kind] = true
	}
	var unsaid []string
	for _, u := range out.Stage.Order {
		if !u.SideKnown() {
			unsaid = append(unsaid, u.Name)
		}
	}
	if len(unsaid) > 0 && (kinds["pan"] || kinds["track"]) {
		why := "the camera pans or tracks, and no line says the side of " + unsaid[0]
		if n := len(unsaid) - 1; n > 0 {
			why += " and " + units.Count(n, "other")
		}
		b.byDefault("side", "straight ahead", why)
	}
	if b.staged != nil && b.staged.placed {
		return // sayFloor says which heights are not known
	}
	if kinds["tilt"] || kinds["boom"] {
		b.byDefault("height", "level with the lens as the shot starts", "the camera tilts or booms, and a distance says no height")
	}
}

// sayNearLoss lists what the light lost near is taken for, where it counts.
func (b *builder) sayNearLoss(l plan.Light) {
	if math.IsNaN(l.Meter) || !l.Loss.Tells() || !b.Shot.Optics.LossByUnit() {
		return
	}
	b.Defaults = append(b.Defaults, plan.Default{
		Name: "light lost near", Value: "as the lens moves out",
		Why: "that holds for a lens that focuses as a unit; others may lose less",
	})
}
