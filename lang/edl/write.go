// Lists written.

package edl

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
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
		if e.Speed != nil {
			fmt.Fprintf(out, "M2   %-8s %s %s\n", oneLine(e.Speed.Reel), perSecond(e.Speed.FPS), rate.Format(e.Speed.Source))
		}
		for _, note := range e.Notes {
			fmt.Fprintf(out, "* %s\n", oneLine(note))
		}
		for _, m := range e.Markers {
			// Readers want colons here, also where the labels of the events are
			// drop-frame and have semicolons.
			at := strings.ReplaceAll(rate.Format(m.At), ";", ":")
			fmt.Fprintf(out, "* LOC: %s %-7s %s\n", at, strings.ToUpper(oneLine(m.Colour)), short(oneLine(m.Text)))
		}
	}
	return out.Flush()
}

// longestName is how many signs of a marker's text are written: longer ones are cut
// off or refused by programs that read lists.
const longestName = 60

// short cuts a text that is too long.
func short(s string) string {
	if signs := []rune(s); len(signs) > longestName {
		return strings.TrimRight(string(signs[:longestName-1]), " ") + "…"
	}
	return s
}

// perSecond writes the frames a second of a speed line as is usual: three digits, a
// point and one digit, more only where the speed is not told without them.
func perSecond(fps float64) string {
	sign := ""
	if fps < 0 {
		sign, fps = "-", -fps
	}
	s := strconv.FormatFloat(fps, 'f', 1, 64)
	if read, err := strconv.ParseFloat(s, 64); err != nil || read != fps {
		s = strings.TrimRight(strconv.FormatFloat(fps, 'f', 6, 64), "0")
	}
	whole, _, _ := strings.Cut(s, ".")
	return sign + strings.Repeat("0", max(0, 3-len(whole))) + s
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
