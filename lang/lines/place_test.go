package lines

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/lang"
)

// A place by its byte alone is the one that its line gives it, also far from
// any mark and behind characters of several bytes.
func TestPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		piece := rapid.StringOfN(rapid.RuneFrom([]rune("ab \n𝄞é")), 20, 40, -1)
		text := &Text{Name: "f", Content: strings.Repeat(piece.Draw(t, "piece"), 3*apart/40) + piece.Draw(t, "end")}
		var list []Line
		for l := range text.All() {
			list = append(list, l)
		}
		for range 4 {
			l := rapid.SampledFrom(list).Draw(t, "line")
			if got := text.Line(l.Number); got != l {
				t.Fatalf("line %d is %+v, want %+v", l.Number, got, l)
			}
			var starts []int
			for i := range l.Text {
				starts = append(starts, i)
			}
			if len(starts) == 0 {
				continue
			}
			from := rapid.SampledFrom(starts).Draw(t, "at")
			to := from + len(string([]rune(l.Text[from:])[:1]))
			if got, want := text.Place(l.Offset+from), text.At(l, from, to); got != want {
				t.Fatalf("%+v, want %+v", got, want)
			}
		}
	})
}

func TestPlaceOutsideTheText(t *testing.T) {
	text := &Text{Content: "ab\ncd"}
	for at, want := range map[int]lang.Pos{-1: {Offset: 0, Line: 1, Column: 1}, 2: {Offset: 2, Line: 1, Column: 3}, 9: {Offset: 5, Line: 2, Column: 3}} {
		if got := text.Place(at).Start; got != want {
			t.Errorf("at %d: %+v, want %+v", at, got, want)
		}
	}
}

func TestNoSuchLine(t *testing.T) {
	text := &Text{Content: "ab\ncd"}
	if got := text.Line(3); got != (Line{Number: 3, Offset: 5}) {
		t.Errorf("%+v", got)
	}
}

// Of very many faults the first are kept and the others counted, the worst of
// them told.
func TestFaults(t *testing.T) {
	var f Faults
	for i := range MaxFaults + 7 {
		d := lang.Diagnostic{Code: "c", Severity: lang.Warning, Range: lang.Range{Start: lang.Pos{Offset: i, Line: i + 1}}}
		if i == MaxFaults+3 {
			d.Severity = lang.Error
		}
		f.Add(d)
	}
	list := f.List()
	last := list[len(list)-1]
	if len(list) != MaxFaults+1 || last.Code != MoreFaults || last.Severity != lang.Error || last.Figures[0].Value != 7 || last.Range.Start.Line != MaxFaults+1 {
		t.Errorf("%d, the last %+v", len(list), last)
	}
	if list := new(Faults).List(); len(list) != 0 {
		t.Errorf("%+v", list)
	}
}
