// The score of a recording as text.

package lists

import (
	"fmt"

	"pullscore/cmd/internal/console"
	"pullscore/interp/plan"
	"pullscore/interp/takes/recorded"
	"pullscore/interp/units"
)

// A Recording says what is said of a recording as a whole.
type Recording struct {
	Frames  int
	Missing int64  // frames that are missing between them
	Unseen  int    // frames that show something else than the shot
	Clock   string // of its timecode; "" where the shot has only one
}

// WriteRecordedTakes writes how the pulls of a shot went in a recording.
func WriteRecordedTakes(screen console.Screen, shot *plan.Shot, r Recording, list []recorded.Score) error {
	w := &takeWriter{console.Lines{Screen: screen}}
	w.Line(screen.Paint(console.Bold, console.Clean(shot.ID+"  "+shot.Title)))
	text := units.Count(r.Frames, "frame")
	if r.Clock != "" {
		text += " by " + r.Clock + " time"
	}
	if r.Missing > 0 {
		text += fmt.Sprintf(", %d missing between them", r.Missing)
	}
	if r.Unseen > 0 {
		text += fmt.Sprintf(", %d more that show something else", r.Unseen)
	}
	w.Wrapped(console.Dim, margin, text)
	if len(list) == 0 {
		w.Wrapped(console.Plain, margin, "The plan has no racks in this shot.")
	}
	for i := range list {
		w.recorded(&list[i])
	}
	return w.Flush()
}

func (w *takeWriter) recorded(s *recorded.Score) {
	to := s.To
	if s.From != "" {
		to = s.From + " to " + s.To
	}
	w.title(fmt.Sprintf("pull %d  %s", s.Pull, to))
	if !s.Scored {
		w.Wrapped(console.Yellow, margin, "Not scored: "+s.Why+".")
		return
	}
	hit := "sharp"
	if !s.Hit {
		hit = "soft"
	}
	w.table([][]string{
		{"set out", s.OnsetCode, late(s.OnsetFrames)},
		{"landed", s.LandingCode, late(s.LandingFrames)},
		{"moved for", takeFigure(float64(s.Time), false) + " s", fmt.Sprintf("a travel of %s deg at the hand", takeFigure(float64(s.Travel), false))},
		{"error", takeFigure(float64(s.Error), true) + " deg", hit + "; past the mark where positive"},
		{"overshoot", takeFigure(float64(s.Overshoot), false) + " deg", "past where it came to rest"},
		{"in the window", takeFigure(float64(s.InWindow), false) + " s", "until the next pull, or the end of the recording"},
	})
	if s.Why != "" {
		w.Wrapped(console.Yellow, margin, s.Why+".")
	}
}

// late says how a frame lies against the planned one.
func late(frames int64) string {
	switch {
	case frames > 0:
		return units.Count(int(frames), "frame") + " late"
	case frames < 0:
		return units.Count(int(-frames), "frame") + " early"
	}
	return "on the frame"
}
