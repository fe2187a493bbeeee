// Lists written.

package edl

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"pullscore/lang/timecode"
)

// Write writes a list whose labels count at rate, with the clips and markers of
// its events. Texts lose their line ends, which the form cannot hold.
func Write(w io.Writer, list *List, rate timecode.Rate) error {
	out := bufio.NewWriter(w)
	fcm := "NON-DROP FRAME"
	if rate.Drop() {
		fcm = "DROP FRAME"
	}
	fmt.Fprintf(out, "TITLE: %s\nFCM: %s\n", oneLine(list.Title), fcm)
	for _, e := range list.Events {
		duration := ""
		if e.Transition != cut {
			duration = fmt.Sprintf("%03d", e.Duration)
		}
		fmt.Fprintf(out, "\n%-4s %-8s %-5s %-4s %3s %s %s %s %s\n", e.Number, oneLine(e.Reel), e.Channels, e.Transition, duration,
			rate.Format(e.SourceIn), rate.Format(e.SourceOut), rate.Format(e.RecordIn), rate.Format(e.RecordOut))
		if e.Clip != "" {
			fmt.Fprintf(out, "* FROM CLIP NAME: %s\n", oneLine(e.Clip))
		}
		if e.ToClip != "" {
			fmt.Fprintf(out, "* TO CLIP NAME: %s\n", oneLine(e.ToClip))
		}
		for _, note := range e.Notes {
			fmt.Fprintf(out, "* %s\n", oneLine(note))
		}
		for _, m := range e.Markers {
			fmt.Fprintf(out, "* LOC: %s %-7s %s\n", rate.Format(m.At), m.Colour, oneLine(m.Text))
		}
	}
	return out.Flush()
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
