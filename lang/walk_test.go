// Tests that hold the two readings of the tags together: a walk takes what
// participle takes, and the printed grammar is participle's own.

package lang

import (
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/ebnf"
	"github.com/alecthomas/participle/v2/lexer"
	"pgregory.net/rapid"
)

const anywhere = inFile | inCamera | inLens | inPuller | inMove | inShot

// agree checks that participle and a walk take the same of the statements of a
// source, and that what is refused has a mistake. It returns how many were
// taken and refused.
func agree(t rapid.TB, src []byte) (taken, refused int) {
	source := newGrammarLexer("", string(src), 0)
	lex, err := lexer.Upgrade(source)
	if err != nil {
		t.Fatal(err)
	}
	p := &parser{lex: lex, tokens: lex.Range(0, lexer.RawCursor(source.count)), in: anywhere}
	for at := 0; !p.tokens[at].EOF(); {
		end := at
		for p.tokens[end].Type != tokLine && !p.tokens[end].EOF() {
			end++
		}
		if p.tokens[end].EOF() {
			return
		}
		if s := identify(&p.tokens[at], &p.tokens[at+1], &p.tokens[min(at+2, len(p.tokens)-1)], anywhere); s != nil {
			if agreeOn(t, p, s, at, end) {
				taken++
			} else {
				refused++
			}
		}
		p.lex.LoadCheckpoint(lexer.Checkpoint{})
		p.lex.FastForward(lexer.RawCursor(end))
		at = end + 1
	}
	return
}

func agreeOn(t rapid.TB, p *parser, s *spec, at, end int) bool {
	saved := p.endAt(end)
	defer func() { p.tokens[end] = saved }()
	start := p.lex.MakeCheckpoint()
	if at == 0 {
		start = lexer.Checkpoint{}
	}
	w := p.walker(start)
	fit := w.walk(s.shape().form) == fits
	m := w.mistake(s, fit)
	p.lex.LoadCheckpoint(start)
	_, err := s.parser().ParseFromLexer(p.lex)
	if (err == nil) != (m == nil) {
		var words []string
		for _, t := range p.tokens[at:end] {
			words = append(words, t.Value)
		}
		t.Fatalf("%s: participle says %v, a walk %+v", strings.Join(words, " "), err, m)
	}
	return err == nil
}

// statementsOfTests returns the lines of the table, the plans and the faulty plans.
func statementsOfTests(t testing.TB) (list []string) {
	for _, in := range inputs {
		list = append(list, strings.Split(in.src, "\n")...)
	}
	files, _ := filepath.Glob("testdata/*/*.pull")
	more, _ := filepath.Glob("testdata/*.pull")
	for _, name := range append(files, more...) {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(src)) {
			line, _, _ = strings.Cut(line, "###")
			list = append(list, strings.TrimSpace(line))
		}
	}
	return slices.DeleteFunc(list, func(line string) bool { return line == "" || line[0] == '#' })
}

func TestWalkAgrees(t *testing.T) {
	taken, refused := agree(t, []byte(strings.Join(statementsOfTests(t), "\n\n")))
	if taken < 200 || refused < 140 {
		t.Errorf("only %d were taken and %d refused", taken, refused)
	}
}

// Lines with words lost, doubled, swapped and put in are taken by both or by
// neither.
func TestWalkAgreesOnSlips(t *testing.T) {
	lines := statementsOfTests(t)
	words := append(Keywords(), ",", "(", ")", "+", "-", "*", "/", "NORA", "T2", `"a"`, "2", "2 m", "1.5 s", "f/2.8", "01:00:00:00", "5'6\"", "inf", ":", "=", "nearer",
		"4:30", "o'clock", "4 o'clock", "3-perf", "16:9", "%")
	words = append(words, softWords...)
	rapid.Check(t, func(t *rapid.T) {
		tokens := strings.Fields(rapid.SampledFrom(lines).Draw(t, "line"))
		for range rapid.IntRange(1, 3).Draw(t, "slips") {
			i := rapid.IntRange(0, len(tokens)).Draw(t, "where")
			switch kind := rapid.IntRange(0, 3).Draw(t, "kind"); {
			case kind == 0 || i == len(tokens):
				tokens = slices.Insert(tokens, i, rapid.SampledFrom(words).Draw(t, "word"))
			case kind == 1:
				tokens = slices.Delete(tokens, i, i+1)
			case kind == 2:
				tokens = slices.Insert(tokens, i, tokens[i])
			default:
				j := rapid.IntRange(0, len(tokens)-1).Draw(t, "with")
				tokens[i], tokens[j] = tokens[j], tokens[i]
			}
		}
		agree(t, []byte(strings.Join(tokens, " ")))
	})
}

// frame is what participle prints the grammar of: of a union it prints the name.
type frame struct {
	Statement Statement `parser:"@@"`
	Moment    *moment   `parser:"@@"`
}

// The printed grammar is what participle has built, and well-formed.
func TestGrammarIsParticiples(t *testing.T) {
	var members []Statement
	for _, s := range distinct() {
		members = append(members, s.of)
	}
	built := participle.MustBuild[frame](participle.Lexer(definition{}), participle.Union(members...)).String()
	theirs := strings.Split(strings.ReplaceAll(built, "product", "Product"), "\n")[1:]
	ours, _ := strings.CutSuffix(Grammar(), byHand)
	mine := strings.Split(strings.TrimSpace(ours), "\n")
	slices.Sort(theirs)
	slices.Sort(mine)
	if !slices.Equal(theirs, mine) {
		for i := range min(len(theirs), len(mine)) {
			if theirs[i] != mine[i] {
				t.Errorf("participle\n%s\nours\n%s", theirs[i], mine[i])
			}
		}
		t.Errorf("%d productions, participle has %d", len(mine), len(theirs))
	}
	parsed, err := ebnf.ParseString(Grammar())
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{}
	for _, p := range parsed.Productions {
		named[p.Production] = true
	}
	for _, p := range parsed.Productions {
		for _, word := range strings.FieldsFunc(p.Expression.String(), func(r rune) bool { return strings.ContainsRune(" ()?*+|=!", r) }) {
			if word[0] >= 'A' && word[0] <= 'Z' && !named[word] {
				t.Errorf("%s of %s has no production", word, p.Production)
			}
		}
	}
}

// At most six productions are read by hand.
func TestProductionsByHand(t *testing.T) {
	hand := map[reflect.Type]bool{}
	var look func(of reflect.Type)
	look = func(of reflect.Type) {
		if isProduction(of) {
			hand[of] = true
			return
		}
		for _, leaf := range shapeOf(of).form.leaves() {
			if leaf.kind == formPiece {
				look(leaf.piece)
			}
		}
	}
	for _, s := range specs {
		look(reflect.TypeOf(s.of).Elem())
	}
	look(reflect.TypeFor[moment]())
	if len(hand) > 6 {
		t.Errorf("%d productions by hand: %v", len(hand), hand)
	}
}

// Every tag names a quantity that there is, and no alternative can be empty:
// participle panics at one that is.
func TestTags(t *testing.T) {
	for _, s := range specs {
		checkTags(t, reflect.TypeOf(s.of).Elem())
	}
	checkTags(t, reflect.TypeFor[moment]())
	for _, name := range quantityNames {
		if q := quantityNamed(name); q.usage == "" {
			t.Errorf("%s is no quantity", name)
		}
	}
}

func checkTags(t *testing.T, of reflect.Type) {
	if isProduction(of) {
		return
	}
	s := shapeOf(of)
	for _, f := range s.fields {
		if f.is != "" && !slices.Contains(quantityNames[:], f.is) {
			t.Errorf("%s.%s is %q, which is no quantity", s.name, f.name, f.is)
		}
	}
	var look func(f *form)
	look = func(f *form) {
		for _, part := range f.parts {
			if f.kind == formChoice && !part.progresses() || f.kind == formRepeat && f.mode != '?' && !part.progresses() {
				t.Errorf("%s: %s can be empty", s.name, part.ebnf(true))
			}
			look(part)
		}
	}
	look(s.form)
	for _, leaf := range s.form.leaves() {
		if leaf.kind == formPiece {
			checkTags(t, leaf.piece)
		}
	}
}

// progresses reports whether a form takes a token wherever it fits.
func (f *form) progresses() bool {
	switch f.kind {
	case formLiteral, formToken, formPiece:
		return true
	case formSequence:
		return slices.ContainsFunc(f.parts, (*form).progresses)
	case formChoice:
		return !slices.ContainsFunc(f.parts, func(part *form) bool { return !part.progresses() })
	case formRepeat:
		return f.mode == '+' && f.parts[0].progresses()
	}
	return false
}

// The words of the language are those of the forms, of the units, and inf.
func TestKeywordsAreLiterals(t *testing.T) {
	want := []string{"inf"}
	for _, u := range unitFacts {
		want = append(want, strings.FieldsFunc(u.text, func(r rune) bool { return r == '/' || r == '%' })...)
	}
	for _, s := range specs {
		want = append(want, wordsOf(reflect.TypeOf(s.of).Elem())...)
	}
	want = append(want, wordsOf(reflect.TypeFor[moment]())...)
	want = slices.DeleteFunc(want, func(w string) bool { return w == "T" || w == "f" || slices.Contains(softWords, w) })
	slices.Sort(want)
	if got := Keywords(); !slices.Equal(got, slices.Compact(want)) {
		t.Errorf("keywords\n%q\nwords of the forms\n%q", got, slices.Compact(want))
	}
}

// wordsOf returns the literals of a type that are words.
func wordsOf(of reflect.Type) (list []string) {
	if isProduction(of) {
		return nil
	}
	for _, leaf := range shapeOf(of).form.leaves() {
		switch {
		case leaf.kind == formLiteral && isWordByte(leaf.text[0]):
			list = append(list, leaf.text)
		case leaf.kind == formPiece:
			list = append(list, wordsOf(leaf.piece)...)
		}
	}
	return list
}
