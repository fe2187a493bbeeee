package lang

import (
	"reflect"
	"strings"
	"testing"
)

// first returns the first statement of a shot in a source, or of the file.
func first(f *File) Statement {
	for _, s := range f.Sections {
		if len(s.Body) > 0 {
			return s.Body[0]
		}
	}
	return f.Body[0]
}

func TestAmend(t *testing.T) {
	for _, c := range []struct{ name, src, word, text, want string }{
		{"inserts behind the last clause", "rack to A, on \"b\"", "over", "over 1 s", "rack to A, on \"b\", over 1 s"},
		{"inserts where there is none", "rack to A", "over", "over 1 s", "rack to A, over 1 s"},
		{"replaces", "rack to A, over 2 s, even", "over", "over 1.9 s", "rack to A, over 1.9 s, even"},
		{"replaces without commas", "rack to A over 2 s even", "over", "over 1.9 s", "rack to A over 1.9 s even"},
		{"replaces a clause of two words", "rack to A, landing on \"b\" + 1 s, over 2 s", "landing", "landing on 3 s", "rack to A, landing on 3 s, over 2 s"},
		{"replaces at by on", "rack to A, at 2 s, over 2 s", "on", "on end of B", "rack to A, on end of B, over 2 s"},
		{"replaces a speed", "A moves to 2 m at 1 m/s, on 3 s", "over", "over 2 s", "A moves to 2 m over 2 s, on 3 s"},
		{"leaves a moment that begins as a speed does", "A moves to 2 m at 3 s, over 1 s", "over", "over 2 s", "A moves to 2 m at 3 s, over 2 s"},
		{"takes out the last", "rack to A, on \"b\", over 2 s", "over", "", "rack to A, on \"b\""},
		{"takes out one between", "rack to A, on \"b\", over 2 s", "on", "", "rack to A, over 2 s"},
		{"takes out without commas", "rack to A on \"b\" over 2 s", "on", "", "rack to A over 2 s"},
		{"before a comment", "rack to A  # why", "over", "over 1 s", "rack to A, over 1 s  # why"},
		{"joined lines", "rack to A,  # why\n    on \"b\",\n    over 2 s  # slowly", "on", "on 3 s", "rack to A,  # why\n    on 3 s,\n    over 2 s  # slowly"},
		{"inserts behind joined lines", "rack to A,\r\n\t\tover 2 s  # slowly", "on", "on 3 s", "rack to A,\r\n\t\tover 2 s, on 3 s  # slowly"},
		{"takes out of joined lines", "rack to A,\n    on \"b\",\n    over 2 s", "on", "", "rack to A,\n    over 2 s"},
		{"keeps a comment before what it takes out", "rack to A,  # why\n    on \"b\",\n    over 2 s", "on", "", "rack to A,  # why\n    over 2 s"},
		{"keeps a comment before the last", "rack to A,  # why\n    on \"b\"  # so", "on", "", "rack to A  # why  # so"},
		{"keeps comments on both sides", "rack to A,  # why\n  on \"b\",  # so\n  over 2 s", "on", "", "rack to A,  # why\n  # so\n  over 2 s"},
		{"a comma in a comment", "rack to A,  # why, oh\n  on \"b\"", "on", "", "rack to A  # why, oh"},
		{"words as clauses", "rack to A, smooth", "even", "even", "rack to A, even"},
		{"the set-up", "with camera A, stop f/2.8", "nd", "nd 0.6", "with camera A, stop f/2.8, nd 0.6"},
		{"all of a statement", "lasts 3 s  # short", "lasts", "lasts 4.5 s", "lasts 4.5 s  # short"},
		{"what stands before the clauses", "subject A at 2 m, 10 cm left, deep 3 cm", "subject", "subject A at 2 m, 5 cm right", "subject A at 2 m, 5 cm right, deep 3 cm"},
		{"letters of several bytes", "“Ä Ü” moves to 2 m, over 2 s", "over", "over 3 s", "“Ä Ü” moves to 2 m, over 3 s"},
		{"no such clause", "rack to A", "deep", "deep 3 cm", ""},
		{"nothing to take out", "rack to A", "over", "", ""},
		{"it says so already", "rack to A, over 1 s", "over", "over 1 s", ""},
		{"what would be no statement", "rack to A", "over", "over 1 s, over", ""},
		{"a Bad one", "rack to A, ovr 1 s", "over", "over 1 s", ""},
		{"no line of two statements", "rack to A", "over", "over 1 s\npause 2 s", ""},
	} {
		head := "\uFEFFshot 1\n  "
		if strings.Contains(c.src, "\r\n") {
			head = "shot 1\r\n\t"
		}
		src := head + c.src + "\n  hold 1 s\n"
		f, _ := Parse("p.pull", []byte(src))
		e, ok := Amend(f, first(f), c.word, c.text)
		if ok != (c.want != "") {
			t.Errorf("%s: ok is %v", c.name, ok)
			continue
		}
		if !ok {
			continue
		}
		got, ok := ApplyEdits(f.Source, []Edit{e})
		if want := head + c.want + "\n  hold 1 s\n"; !ok || string(got) != want {
			t.Errorf("%s: got %q, want %q", c.name, got, want)
		}
		checkEditPlace(t, f.Source, e)
	}
}

// checkEditPlace holds lines and columns of an edit to its offsets.
func checkEditPlace(t *testing.T, src []byte, e Edit) {
	t.Helper()
	for _, p := range []Pos{e.Range.Start, e.Range.End} {
		if want := placeOf(src, p.Offset); p != want {
			t.Errorf("an edit at %+v, which is %+v", p, want)
		}
	}
}

func TestAmendAllMakesOneEdit(t *testing.T) {
	f, _ := Parse("p.pull", []byte("shot 1\n  rack to A,  # why\n    on \"b\",\n    over 2 s,\n    even\n"))
	e, ok := AmendAll(f, first(f), Clause{"on", ""}, Clause{"over", ""}, Clause{"with", "with pan"})
	if got, applied := ApplyEdits(f.Source, []Edit{e}); !ok || !applied || string(got) != "shot 1\n  rack to A,  # why\n    even, with pan\n" {
		t.Errorf("got %q", got)
	}
}

func TestAnEditIsOfWords(t *testing.T) {
	f, _ := Parse("p.pull", []byte("shot 1\n  rack to A, over 1.2 s\n"))
	if e, ok := Amend(f, first(f), "over", "over 1.9 s"); !ok || e.Text != "1.9" || e.Range.Start.Column != 19 || e.Range.End.Column != 22 {
		t.Errorf("got %+v", e)
	}
}

// Every clause of every input is taken out and written again: the statement says the same.
func TestAmendGivesBackWhatItTakes(t *testing.T) {
	clauses := 0
	for _, in := range inputs {
		f, diags := Parse("p.pull", []byte(in.src))
		if len(diags) > 0 {
			continue
		}
		all := f.Body
		for _, s := range f.Sections {
			all = append(all, s.Body...)
		}
		for _, s := range all {
			clauses += checkClauses(t, f, s)
		}
	}
	if clauses < 150 {
		t.Errorf("%d clauses were tried", clauses)
	}
}

func checkClauses(t *testing.T, f *File, s Statement) (n int) {
	at := s.Range()
	text := string(f.Source[at.Start.Offset:at.End.Offset])
	shape := shapeOf(reflect.TypeOf(s).Elem())
	w, ok := shape.reads(text)
	if !ok {
		t.Errorf("cannot read %q", text)
		return 0
	}
	for i, at := range w.begun {
		word := w.token(at).Value
		clause := text[w.token(at).Pos.Offset:w.endOfClause(i)]
		if len(shape.begunBy(word)) > 1 {
			continue // only what follows it tells which is meant
		}
		n++
		without, ok := amendAll(shape, text, []Clause{{word, ""}})
		if !ok {
			if len(w.begun) > 1 {
				t.Errorf("cannot take %q out of %q", clause, text)
			}
			continue
		}
		made, ok := amendAll(shape, without, []Clause{{word, clause}})
		if !ok {
			t.Errorf("cannot write %q into %q", clause, without)
			continue
		}
		if got, want := meaningIn(f, s, made), meaningOf(s); got != want {
			t.Errorf("%q says\n%s\nand %q says\n%s", made, got, text, want)
		}
	}
	return n
}

// meaningIn parses a file with another text in place of a statement, and returns what that
// says.
func meaningIn(f *File, s Statement, text string) string {
	at := s.Range()
	src := string(f.Source[:at.Start.Offset]) + text + string(f.Source[at.End.Offset:])
	g, _ := Parse("p.pull", []byte(src))
	all := g.Body
	for _, sec := range g.Sections {
		all = append(all, sec.Body...)
	}
	for _, other := range all {
		if other.Range().Start.Offset == at.Start.Offset {
			return meaningOf(other)
		}
	}
	return "nothing"
}

func TestInsert(t *testing.T) {
	for _, c := range []struct{ src, above, below string }{
		{"shot 1\n  rack to A  # why\n  hold 1 s\n", "shot 1\n  pause 1 s\n  rack to A  # why\n  hold 1 s\n", "shot 1\n  rack to A  # why\n  pause 1 s\n  hold 1 s\n"},
		{"shot 1\r\n\track to A,\r\n\t\tover 1 s", "shot 1\r\n\tpause 1 s\r\n\track to A,\r\n\t\tover 1 s", "shot 1\r\n\track to A,\r\n\t\tover 1 s\r\n\tpause 1 s"},
		{"\uFEFFrate 24", "\uFEFFpause 1 s\nrate 24", "\uFEFFrate 24\npause 1 s"},
		{"shot 1\rrack to A\r", "shot 1\rpause 1 s\rrack to A\r", "shot 1\rrack to A\rpause 1 s\r"},
	} {
		f, _ := Parse("p.pull", []byte(c.src))
		for want, e := range map[string]Edit{c.above: InsertAbove(f, first(f), "pause 1 s"), c.below: InsertBelow(f, first(f), "pause 1 s")} {
			if got, ok := ApplyEdits(f.Source, []Edit{e}); !ok || string(got) != want {
				t.Errorf("got %q, want %q", got, want)
			}
			checkEditPlace(t, f.Source, e)
		}
	}
}

func TestApplyEdits(t *testing.T) {
	edit := func(from, to int, text string) Edit {
		return Edit{Range: Range{Start: Pos{Offset: from}, End: Pos{Offset: to}}, Text: text}
	}
	for _, c := range []struct {
		edits []Edit
		want  string
		ok    bool
	}{
		{nil, "abcdef", true},
		{[]Edit{edit(4, 6, "x"), edit(0, 1, "y")}, "ybcdx", true},
		{[]Edit{edit(2, 2, "1"), edit(2, 2, "2"), edit(2, 3, "")}, "ab12def", true},
		{[]Edit{edit(0, 3, ""), edit(2, 4, "")}, "", false},
		{[]Edit{edit(5, 7, "")}, "", false},
		{[]Edit{edit(3, 2, "")}, "", false},
	} {
		if got, ok := ApplyEdits([]byte("abcdef"), c.edits); ok != c.ok || string(got) != c.want {
			t.Errorf("%+v: %q, %v", c.edits, got, ok)
		}
	}
}
