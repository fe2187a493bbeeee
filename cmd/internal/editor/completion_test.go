package editor

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp/units"
	"pullscore/lang"
)

// offered returns the labels of what is offered at a byte of a text.
func offered(t testing.TB, s *snapshot, uri string, offset int) []lsp.CompletionItem {
	t.Helper()
	d, err := s.document(uri)
	if err != nil {
		t.Fatal(err)
	}
	p := &lsp.CompletionParams{TextDocument: lsp.TextDocument{URI: uri}, Position: d.index().position(offset, utf16)}
	result, err := completion(t.Context(), s, p)
	if err != nil {
		t.Fatal(err)
	}
	return result.(lsp.CompletionList).Items
}

// Of 300 places in the examples the word that stands there is among the first five that
// are offered in nine of ten: statements, clauses, units, names, and the words of lines in
// quotes. What nobody can know is no such place: numbers, new names, and what people say.
func TestTheWrittenWordIsOffered(t *testing.T) {
	paths, err := filepath.Glob("../../../examples/*.pull")
	if err != nil || len(paths) == 0 {
		t.Fatal(err)
	}
	var places []place
	for _, path := range paths {
		places = append(places, placesOf(t, path)...)
	}
	const asked = 300
	found := 0
	var missed []string
	for n := range asked {
		at := places[n*len(places)/asked]
		items := at.offered(t)
		items = items[:min(5, len(items))]
		if slices.ContainsFunc(items, at.is) {
			found++
			continue
		}
		var labels []string
		for _, it := range items {
			labels = append(labels, it.Label)
		}
		missed = append(missed, fmt.Sprintf("%s:%d: %q behind %q is not among %q", filepath.Base(at.path), at.line, at.word, at.before, labels))
	}
	t.Logf("of %d places %d have the word that stands there among the first five\n%s", asked, found, strings.Join(missed, "\n"))
	if found*10 < asked*9 {
		t.Errorf("only %d of %d", found, asked)
	}
}

// A place is a word of a plan, which is taken out to see whether it is offered.
type place struct {
	path, word, before string
	start, line        int
	text               string // without the word, and what is behind it in its line
}

func (p place) is(it lsp.CompletionItem) bool {
	return it.TextEdit.NewText == p.word || strings.TrimRight(it.Label, `":( `) == strings.TrimRight(p.word, `":( `) ||
		strings.HasPrefix(it.Label, p.word+" ") || strings.Trim(it.Label, `"`) == strings.Trim(p.word, `"`)
}

func (p place) offered(t *testing.T) []lsp.CompletionItem {
	path, err := filepath.Abs(p.path)
	if err != nil {
		t.Fatal(err)
	}
	s := held(map[string]string{uriOf(path): p.text})
	return offered(t, s, uriOf(path), p.start)
}

// placesOf returns the places of a plan.
func placesOf(t *testing.T, path string) (list []place) {
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var before lang.Token
	for _, token := range lang.Tokens(src) {
		word := string(src[token.Start:token.End])
		lineEnd := token.End + strings.IndexByte(string(src[token.End:])+"\n", '\n')
		lineStart := strings.LastIndexByte(string(src[:token.Start]), '\n') + 1
		first := strings.TrimSpace(string(src[lineStart:token.Start])) == ""
		previous := string(src[before.Start:before.End])
		before = token
		start := token.Start
		switch token.Kind {
		case lang.TokenKeyword:
		case lang.TokenName:
			if slices.Contains([]string{"subject", "voice", "camera", "lens", "puller", "cue", "let", "move", "shot", "plan"}, previous) && !strings.Contains(string(src[lineStart:token.Start]), "with") {
				continue // a new name
			}
			if !first && strings.Contains(string(src[lineStart:token.Start]), "(") {
				continue
			}
		case lang.TokenText:
			switch previous {
			case "on", "until":
				start++
				word = strings.Trim(word, `"“”`)
			case "use", "to", "and", "lens":
				if !strings.Contains(string(src[lineStart:token.Start]), "with") && previous == "lens" {
					continue
				}
				start++
				word = strings.Trim(word, `"“”`)
			default:
				continue
			}
		default:
			continue
		}
		if strings.Contains(word, " ") && previous == "on" {
			continue // several words, which are typed one by one
		}
		text := string(src[:start]) + string(src[lineEnd:])
		list = append(list, place{path, word, string(src[lineStart:start]), start, 1 + strings.Count(string(src[:start]), "\n"), text})
	}
	return list
}

const writing = `plan "The quay"
use "kit.pull"
with camera A, lens "75", stop f/4, meter f/4
subject OTTO at 2 m
subject "MATE #2" at 3 m, 20 cm left
subject BELL at 2.5 m

move glance(who, back)
  rack to who, over 1.5 s
  rack to back, over 1.5 s

shot 1
  start on OTTO
  OTTO: "Ring the bell, the old bell.", lasting 2 s
  cue stroke
  @
  hold 2 s

shot 2
  cue elsewhere
`

func TestCompletion(t *testing.T) {
	for _, test := range []struct{ line, first, has, lacks string }{
		{"", "hold|rack to", `OTTO:|hold|glance(|"MATE #2":|start on`, "sensor|focal"},
		{"rack to ", `"MATE #2"|BELL|inf`, "", "OTTO|over"},
		{"rack to BELL, ", "over|on|landing", "because|smooth", "until"},
		{"rack to BELL, landing on ", "stroke|end of OTTO", `"bell"|"bell" 2|"ring"`, "elsewhere"},
		{`rack to BELL, landing on "`, "bell|bell 2", "old|the", "stroke"},
		{`rack to "`, "MATE #2", "", "BELL|OTTO"},
		{"rack to BELL, over 1 ", "s", "fr|ms", "m"},
		{"follow ", `OTTO|"MATE #2"|BELL`, "", "inf"},
		{"with camera ", "A|B", "", "75"},
		{"with lens ", `"35"|"50"`, `"75"`, "A"},
		{`with lens "`, "35|50", "75", "A"},
		{"with lens \"50\", stop ", "", "f/2.8|f/4|f/11", "f/1.3|f/32"},
		{`OTTO: "rack `, "", "", "rack to|bell"},
		{"hold 1 s # rack ", "", "", "to"},
		{`glance(`, `OTTO|"MATE #2"|BELL|stroke`, `"ring"`, "elsewhere"},
	} {
		line, had, _ := strings.Cut(writing, "@")
		path, _ := example(t, "kit.pull")
		uri := uriOf(filepath.Join(filepath.Dir(path), "quay.pull"))
		s := held(map[string]string{uri: line + test.line + had})
		var labels []string
		for _, it := range offered(t, s, uri, len(line+test.line)) {
			labels = append(labels, it.Label)
		}
		split := func(list string) []string {
			return strings.FieldsFunc(list, func(r rune) bool { return r == '|' })
		}
		for _, want := range append(split(test.first), split(test.has)...) {
			if !slices.Contains(labels, want) {
				t.Errorf("%q: %q is not among %q", test.line, want, labels)
			}
		}
		for _, lack := range split(test.lacks) {
			if slices.Contains(labels, lack) {
				t.Errorf("%q: %q is among %q", test.line, lack, labels)
			}
		}
		if first := split(test.first); !slices.Equal(labels[:min(len(first), len(labels))], first) {
			t.Errorf("%q: first come %q, not %q", test.line, labels, first)
		}
	}
}

func TestAStopIsOfferedWithWhatItDoes(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	uri, at := uriOf(path), strings.Index(src, "f/4")
	s := held(map[string]string{uri: src[:at] + src[at+len("f/4"):]})
	said := map[string]string{}
	for _, it := range offered(t, s, uri, at) {
		said[it.Label] = it.Detail
	}
	p, err := held(map[string]string{uri: src}).plan(t.Context(), uri)
	if err != nil {
		t.Fatal(err)
	}
	lowest, wanted := 1.0, 0.0
	for _, shot := range p.result().Plan.Shots {
		for _, pull := range shot.Pulls {
			lowest, wanted = min(lowest, float64(pull.Chance)), float64(shot.Wanted)
		}
	}
	if want := "every rack lands " + units.ForTable(false).Chance(lowest, wanted) + " or better"; said["f/4"] != want {
		t.Errorf("f/4: %q, not %q, of %v", said["f/4"], want, said)
	}
}

// A stop that has begun can be finished: the stops are offered in its place.
func TestAStopThatHasBegunIsOffered(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	uri, at := uriOf(path), strings.Index(src, "f/4")
	whole := offered(t, held(map[string]string{uri: src[:at] + src[at+len("f/4"):]}), uri, at)
	for _, begun := range []string{"f/", "f/5", "f/5.", "T", "T2"} {
		s := held(map[string]string{uri: src[:at] + begun + src[at+len("f/4"):]})
		d, err := s.document(uri)
		if err != nil {
			t.Fatal(err)
		}
		items := offered(t, s, uri, at+len(begun))
		if len(items) == 0 || len(items) != len(whole) {
			t.Errorf("%q: %d stops, not %d", begun, len(items), len(whole))
		}
		for i, it := range items {
			if it.Label != whole[i].Label || it.Detail != whole[i].Detail || s.offset(d, it.TextEdit.Range.Start) != at || s.offset(d, it.TextEdit.Range.End) != at+len(begun) {
				t.Errorf("%q: %+v, not %+v", begun, it, whole[i])
			}
		}
	}
}

// Behind a word of the language nothing is offered that would make a name of it, unless
// somebody has that name.
func TestAPanIsNobody(t *testing.T) {
	uri := "file:///nowhere/a.pull"
	for src, want := range map[string]bool{
		"subject WREN at 2 m\nshot 1\n  start on WREN\n  pan ":                    false,
		"subject WREN at 2 m\nsubject pan at 2 m\nshot 1\n  start on pan\n  pan ": true,
		"subject WREN at 2 m\nshot 1\n  start on WREN\n  WREN ":                   true,
	} {
		var labels []string
		for _, it := range offered(t, held(map[string]string{uri: src + "\n"}), uri, len(src)) {
			labels = append(labels, it.Label)
		}
		for _, word := range []string{":", "moves"} {
			if slices.Contains(labels, word) != want {
				t.Errorf("%q: %q", src, labels)
			}
		}
	}
}

// What is offered can be written: the text with it is the text that the label promises.
func TestWhatIsOfferedIsWrittenWhole(t *testing.T) {
	uri := "file:///nowhere/a.pull"
	for before, want := range map[string]string{
		"subject \"A B\" at 2 m\nshot 1\n  rack to ":       "subject \"A B\" at 2 m\nshot 1\n  rack to \"A B\"",
		"subject \"A B\" at 2 m\nshot 1\n  rack to \"":     "subject \"A B\" at 2 m\nshot 1\n  rack to \"A B\"",
		"subject \"A B\" at 2 m\nshot 1\n  rack to \"A B":  "subject \"A B\" at 2 m\nshot 1\n  rack to \"A B\"",
		"voice É\nshot 1\n  É: \"Ja ja.\"\n  cue x on \"j": "voice É\nshot 1\n  É: \"Ja ja.\"\n  cue x on \"ja\"",
	} {
		s := held(map[string]string{uri: before})
		items := offered(t, s, uri, len(before))
		if len(items) == 0 {
			t.Errorf("%q: nothing is offered", before)
			continue
		}
		if got := string(applied([]byte(before), []lsp.TextEdit{*items[0].TextEdit}, utf16)); got != want {
			t.Errorf("%q: %q, not %q", before, got, want)
		}
	}
}

func TestSignatureHelp(t *testing.T) {
	for _, test := range []struct{ line, label, part string }{
		{"rack to BELL, landing on ", lang.Usage("rack"), "landing on MOMENT"},
		{"rack to BELL, over 1 ", lang.Usage("rack"), "over TIME"},
		{"rack ", lang.Usage("rack"), lang.Usage("rack")[:strings.Index(lang.Usage("rack"), ",")]},
		{"glance(OTTO, ", "glance(who, back)", "back"},
		{"glance(", "glance(who, back)", "who"},
		{"", "", ""},
		{"OTTO: ", lang.Usage(":"), "NAME: \"WORDS\""},
	} {
		line, had, _ := strings.Cut(writing, "@")
		uri := "file:///nowhere/quay.pull"
		s := held(map[string]string{uri: line + test.line + had})
		d, _ := s.document(uri)
		result, err := signatureHelp(t.Context(), s, &lsp.PositionParams{TextDocument: lsp.TextDocument{URI: uri}, Position: d.index().position(len(line+test.line), utf16)})
		if err != nil {
			t.Fatal(err)
		}
		if test.label == "" {
			if result != nil {
				t.Errorf("%q: %+v", test.line, result)
			}
			continue
		}
		help, ok := result.(lsp.SignatureHelp)
		if !ok {
			t.Errorf("%q: %+v", test.line, result)
			continue
		}
		one := help.Signatures[help.ActiveSignature]
		part := one.Parameters[*help.ActiveParameter].Label
		if got := one.Label[part[0]:part[1]]; one.Label != test.label || got != test.part {
			t.Errorf("%q: %q of %q, not %q of %q", test.line, got, one.Label, test.part, test.label)
		}
	}
}
