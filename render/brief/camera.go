// What the camera of a shot does, in words: its turns and ways, and who is in the
// picture. A camera that stays on its axis has neither.

package brief

import (
	"cmp"
	"slices"
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// cameraTable lists the turns of the camera, and its moves to another place, in the
// order of their starts.
func cameraTable(s *plan.Shot) Passage {
	t := Passage{Heading: "Camera", Columns: []Column{
		{"what", true}, {"starts", false}, {"lands", false}, {"takes", false}, {"begins at", false}, {"ends at", false}, {"peak", false},
	}}
	if s.Optics.Rig == nil {
		return t
	}
	if s.Operator != "" {
		t.Sentences = []string{s.Operator + " pans and tilts."}
	}
	type row struct {
		start plan.Number
		cells []string
	}
	var rows []row
	add := func(start, end plan.Number, what, from, to, peak string) {
		rows = append(rows, row{start, []string{what, sheet.When(s, float64(start)), sheet.When(s, float64(end)), sheet.Figures.Time(float64(end - start)), from, to, peak}})
	}
	angle := func(n plan.Number) string { return sheet.Figures.AngleTo(float64(n), 1) }
	for _, turn := range s.Turns {
		add(turn.Start, turn.End, turnName(turn)+", "+moments.Heading(turn.Kind, float64(turn.To-turn.From), sheet.Figures),
			angle(turn.From), angle(turn.To), sheet.Figures.Speed(float64(turn.Peak)))
	}
	for i := range s.Blocking {
		b := &s.Blocking[i]
		if what, _, _ := strings.Cut(moments.Goes(b, sheet.Style(s)), ", "); what != "" { // its time has a column
			add(b.Start, b.End, what, far(s, b.From), far(s, b.To), "")
		}
	}
	slices.SortStableFunc(rows, func(a, b row) int { return cmp.Compare(a.start, b.start) })
	for _, r := range rows {
		t.Rows = append(t.Rows, r.cells)
	}
	return t.said()
}

// far writes how far the camera has gone.
func far(s *plan.Shot, n plan.Number) string {
	if n == 0 {
		return "0"
	}
	return sheet.Style(s).Gap(float64(n))
}

// turnName says what a turn is, and to whom it goes or with whom.
func turnName(t plan.Turn) string {
	switch {
	case t.Target == "":
		return t.Kind
	case t.Profile == "with":
		return t.Kind + " with " + t.Target
	}
	return t.Kind + " to " + t.Target
}

// pictureTable lists where everyone is to the camera as the shot starts, and from when to
// when they are in its picture.
func pictureTable(s *plan.Shot) Passage {
	t := Passage{Heading: "In the picture", Columns: []Column{
		{"who", true}, {"tape", false}, {"focus", false}, {"off axis", false}, {"above axis", false}, {"in the picture", true},
	}}
	if s.Optics.Rig == nil {
		return t
	}
	in := sheet.Style(s)
	t.Sentences = []string{"Tape, focus and angle are those of the start. The focus is the part of the tape along the lens's axis."}
	for _, u := range s.Subjects {
		v, above := s.ViewOf(u, 0), ""
		if v.Above != 0 {
			above = in.Gap(v.Above)
		}
		t.Rows = append(t.Rows, []string{
			u.Name, in.Tape(v.Tape()), in.Tape(v.Along), sheet.Figures.AngleTo(v.OffAxis(), 1), above, strings.TrimPrefix(moments.InFrame(s, u, in), "in the picture "),
		})
	}
	return t.said()
}
