// Which takes a cut uses, as text and as CSV.

package lists

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/interp/takes/used"
	"pullscore/interp/units"
)

// WriteUsed writes which take the cut uses of every rack, and how it landed.
func WriteUsed(screen console.Screen, r *used.Report) error {
	w := &takeWriter{console.Lines{Screen: screen}}
	name := "Takes in " + r.Cut
	if r.Plan != "" {
		name = r.Plan + ": takes in " + r.Cut
	}
	w.Line(screen.Paint(console.Bold, console.Clean(name)))
	shot := ""
	for i := range r.Racks {
		u := &r.Racks[i]
		if u.Shot != shot {
			shot = u.Shot
			w.title(shot)
		}
		w.used(u)
	}
	w.Line("")
	if len(r.Not) > 0 {
		w.Wrapped(console.Dim, "", fmt.Sprintf("%s does not have %s.", r.Cut, strings.Join(r.Not, ", ")))
	}
	if r.Gone > 0 {
		w.Wrapped(console.Dim, "", fmt.Sprintf("Removed by the cut: %s.", units.Count(r.Gone, "rack")))
	}
	if r.Unread > 0 {
		w.Wrapped(console.Yellow, "", fmt.Sprintf("%s of the log with a timecode that is none at this rate.", units.Count(r.Unread, "row")))
	}
	text := fmt.Sprintf("In the cut: %s, %d sharp, %d soft, %d not logged", units.Count(len(r.Racks), "rack"), r.Sharp, r.Soft, r.Unlogged)
	if r.Unjudged > 0 {
		text += fmt.Sprintf(", %d that nobody judged", r.Unjudged)
	}
	if r.Part > 0 {
		text += fmt.Sprintf(", %d cut before landing", r.Part)
	}
	w.Wrapped(console.Plain, "", text+".")
	return w.Flush()
}

// used writes one rack.
func (w *takeWriter) used(u *used.Use) {
	move := "to " + u.To
	if u.From != "" {
		move = u.From + " to " + u.To
	}
	text := fmt.Sprintf("%d %s", u.Pull, move)
	if u.Take != "" {
		text += ", take " + u.Take
	}
	colour := map[string]console.Style{used.Sharp: console.Plain, used.Soft: console.Red}
	style, ok := colour[u.Sharp]
	if !ok {
		style = console.Yellow
	}
	w.Wrapped(style, margin, text+": "+u.Words())
	w.Wrapped(console.Dim, margin+"   ", fmt.Sprintf("rec %s to %s, clip %s", u.RecordIn, u.RecordOut, u.Clip))
	if u.Error.Known() {
		style := units.ForTable(u.Imperial)
		figures := fmt.Sprintf("landed at %s, the mark at %s: ", style.Gap(float64(u.Landed)), style.Gap(float64(u.Mark))) + takeFigure(float64(u.Error), true) + " deg"
		if u.Window[0].Known() && u.Window[1].Known() {
			figures += fmt.Sprintf(" of %s to %s", takeFigure(float64(u.Window[0]), true), takeFigure(float64(u.Window[1]), true))
		}
		w.Wrapped(console.Dim, margin+"   ", figures)
	}
}

// WriteUsedCSV writes a row a rack (RFC 4180). Angles are degrees at the hand.
func WriteUsedCSV(out io.Writer, r *used.Report) error {
	w := csv.NewWriter(out)
	w.Write([]string{ //nolint:errcheck // told by Error
		"shot", "pull", "to", "record_in", "record_out", "clip", "take", "landed_m", "mark_m",
		"error_deg", "window_from_deg", "window_to_deg", "sharp", "other_takes",
	})
	for i := range r.Racks {
		u := &r.Racks[i]
		w.Write([]string{ //nolint:errcheck // told by Error
			guarded(u.Shot), strconv.Itoa(u.Pull), guarded(u.To), u.RecordIn, u.RecordOut, guarded(u.Clip), guarded(u.Take),
			cell(u.Landed), cell(u.Mark), cell(u.Error), cell(u.Window[0]), cell(u.Window[1]), u.Sharp, guarded(strings.Join(u.Others, " ")),
		})
	}
	w.Flush()
	return w.Error()
}
