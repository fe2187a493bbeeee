package captions

import (
	"fmt"
	"math/rand"
	"reflect"
	"runtime"
	"strings"
	"testing"

	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/testing/samples"
)

// whole reads a file without dividing it.
func whole(t *lines.Text, vtt bool) (list []Cue, diags []lang.Diagnostic) {
	var faults lines.Faults
	r := reader{text: t, lines: t.All(), faults: &faults, yield: func(c Cue) bool {
		list = append(list, c)
		return true
	}}
	r.read(vtt)
	return list, faults.List()
}

// checkDivided compares a file that is read whole and in parts of a size.
func checkDivided(t *testing.T, text *lines.Text, vtt bool, size int) (parts int) {
	t.Helper()
	if vtt && !signed(text.Content) {
		return 0 // nothing of it is read
	}
	cues, diags := whole(text, vtt)
	var faults lines.Faults
	var got []Cue
	divided := partsOf(text, vtt, size)
	sideBySide(text, divided, vtt, &faults, func(c Cue) bool {
		got = append(got, c)
		return true
	})
	for i, c := range got {
		if i == len(cues) || !reflect.DeepEqual(c, cues[i]) {
			t.Fatalf("cue %d is %+v in parts", i, c)
		}
	}
	if told := faults.List(); len(got) != len(cues) || !reflect.DeepEqual(told, diags) {
		t.Fatalf("in %d parts are %d cues, and %d in the whole; is told\n%v\nand in the whole\n%v", len(divided), len(got), len(cues), told, diags)
	}
	return len(divided)
}

// Files from outside say the same in parts and whole.
func TestPartsOfSamples(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(3))
	parts := 0
	for _, form := range []string{"srt/", "vtt/"} {
		samples.Each(t, form, func(t *testing.T, name string, src []byte, _ expected) {
			text, _ := lines.Decode(name, src)
			parts += checkDivided(t, text, form == "vtt/", 0)
		})
	}
	if parts < 100 {
		t.Errorf("only %d parts", parts)
	}
}

// Files of every kind of line in any order, faults at the edges too, say the same in parts
// and whole.
func TestParts(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(3))
	r := rand.New(rand.NewSource(1))
	rows := []string{
		"", "", "", "", " ", "\t", "\u00a0", "7", "12", " 8 ", "Who is there?", "- Nobody: 7:30", "NOTE of this", "STYLE", "WEBVTT", "<v Ada>Aye", "&amp;", "<i>Go</i>",
		"00:00:01,000 --> 00:00:02,000", "00:00:03.000 --> 00:00:04.000", "100:00:03.000 --> 100:00:04.000 line:0", "00:00:05,000 --> 00:00:04,000",
		"00:00:05,00 --> 00:00:05,00", "00:00:05,000 -> 00:00:06,000", "-->", "00:61:00,000 --> x", "A --> B",
	}
	parts := 0
	for range 3000 {
		var src []string
		for range 2 + r.Intn(24) {
			src = append(src, rows[r.Intn(len(rows))])
		}
		vtt := r.Intn(2) == 0
		if vtt && r.Intn(8) > 0 {
			src = append([]string{"WEBVTT"}, src...)
		}
		text, _ := lines.Decode("f.srt", []byte(strings.Join(src, "\n")))
		parts += checkDivided(t, text, vtt, 0)
	}
	if parts < 6000 {
		t.Errorf("only %d parts", parts)
	}
}

// A long file is divided, and has more faults than are kept in most of its parts.
func TestLongParts(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(3))
	talk := strings.Repeat("Aye, and who is there? ", 9)
	for _, vtt := range []bool{false, true} {
		passed := 0
		var src strings.Builder
		src.WriteString("WEBVTT\n\n")
		for n := range 20_000 {
			switch {
			case n > 6000 && n%3 > 0:
				fmt.Fprintf(&src, "%d\n\n00:00:01.000 -> 00:00:02.000\nlost %s\n\n", n, talk)
			default:
				fmt.Fprintf(&src, "%d\n00:00:01.000 --> 00:00:0%d.000\n<v Ada>%s\n\n", n, n%7, talk)
			}
		}
		text := &lines.Text{Name: "f.srt", Content: src.String()}
		if !vtt {
			text.Content = strings.TrimPrefix(text.Content, "WEBVTT\n\n")
		}
		if n := checkDivided(t, text, vtt, 64<<10); n < 20 || len(text.Content) < long {
			t.Errorf("%d parts of %d bytes", n, len(text.Content))
		}
		text.Progress = func(done, total int) { passed = done }
		if cues, diags := Read(text); len(diags) != lines.MaxFaults+1 || len(cues) < 9000 || passed < 3*long/4 {
			t.Errorf("%d faults, %d cues, %d bytes", len(diags), len(cues), passed)
		}
	}
}
