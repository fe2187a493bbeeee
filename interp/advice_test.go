// All advice holds: what a message tells people to write can be read where they
// would write it.

package interp_test

import (
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"pullscore/interp/testing/slips"
	"pullscore/lang"
)

// advisedSlips is how many slips are made for what they are told.
const advisedSlips = 600

// An advised is a finding with the plan that it was told of.
type advised struct {
	d    lang.Diagnostic
	src  string
	told func(src string) []lang.Diagnostic // of the file with another text
}

// advice returns what is told of the plans that are told every code, and of the slips,
// each advice once. The first test that asks gathers it for all.
func advice(t *testing.T) []advised {
	t.Helper()
	gathered.Do(func() { gathered.list = gather(t) })
	return gathered.list
}

var gathered struct {
	sync.Once
	list []advised
}

func gather(t *testing.T) (list []advised) {
	seen := map[string]bool{}
	note := func(src string, told func(string) []lang.Diagnostic, file string) {
		for _, d := range told(src) {
			if key := d.Code + d.Detail + curesOf(d); d.Range.File == file && !seen[key] {
				seen[key] = true
				list = append(list, advised{d, src, told})
			}
		}
	}
	plan := func(src string, files []string) {
		note(src, func(src string) []lang.Diagnostic { return interpret("plan.pull", src, files...).Findings }, "plan.pull")
	}
	for _, lines := range allLines(t).plans {
		plan(strings.Join(lines, "\n")+"\n", shuffledFiles)
	}
	for _, make := range rare {
		plan(make())
	}
	c := slipCorpus(t)
	for n := range advisedSlips {
		m := c.makeSlip(rand.New(rand.NewPCG(slipsSeed+2, uint64(n))), slips.Kind(n%slips.Kinds))
		told := func(src string) []lang.Diagnostic {
			_, res := c.run(m.scene, map[string][]string{m.file: strings.Split(strings.TrimSuffix(src, "\n"), "\n")})
			return res.Findings
		}
		note(strings.Join(m.is, "\n")+"\n", told, m.file)
	}
	return list
}

// curesOf returns the cures of a finding, without their figures.
func curesOf(d lang.Diagnostic) (s string) {
	for _, c := range d.Cures {
		s += strings.Trim(c.Text, "0123456789. ")
	}
	return s
}

// leads are the words behind which an example stands in advice; prose is what goes
// on in words there.
var (
	leads = regexp.MustCompile(`(?:Write|write|As in|as in|Begin the file with|header|Say which line|Say which|quotes|may|does|itself|instead|Did you mean):? `)
	prose = regexp.MustCompile(`^(?:it|its|a|an|under|for|not|from|on a larger|by|have|them|more) `)
	ends  = regexp.MustCompile("[.?] [A-Z]|; | without | where | for (?:the|all|a) |[.?]$")
)

// examples returns what an advice says can be written.
func examples(detail string) (list []string) {
	rest := detail
	for {
		at := leads.FindStringIndex(rest)
		if at == nil {
			return list
		}
		rest = rest[at[1]:]
		text := rest
		if !prose.MatchString(text) {
			list = append(list, alternatives(text)...)
		}
	}
}

// inBraces is a parameter in a text.
var inBraces = regexp.MustCompile(`\{[^}]*\}`)

// alternatives returns the examples at the start of a text, which `or` stands
// between.
func alternatives(text string) (list []string) {
	hidden := hideTexts(text)
	if at := ends.FindStringIndex(hidden); at != nil {
		text, hidden = text[:at[0]], hidden[:at[0]]
	}
	for {
		i := strings.Index(hidden, " or ")
		if i < 0 {
			return append(list, strings.Trim(text, "` "))
		}
		list = append(list, strings.Trim(text[:i], "`, "))
		text, hidden = text[i+4:], hidden[i+4:]
	}
}

// hideTexts returns a text of the same length with nothing in its quotes. A mark of
// inches is no quote.
func hideTexts(s string) string {
	hidden, within := []byte(s), false
	for i, c := range hidden {
		switch {
		case c == '"' && (within || i == 0 || s[i-1] < '0' || s[i-1] > '9'):
			within = !within
		case within:
			hidden[i] = '_'
		}
	}
	return string(hidden)
}

// usages are how statements are written, with placeholders: a test of the grammar
// holds them.
func usages() (list []string) {
	for _, word := range append(lang.Words(lang.RoleStatement), ":", "(", "moves") {
		for _, u := range append(lang.Usages(word), lang.Usage(word)) {
			list = append(list, u, strings.TrimRight(u, ". "))
		}
	}
	return list
}

// remarks are the codes whose advice may tell how something else than what is at
// fault is written, since a sign or a name there was taken for it.
var remarks = map[string]bool{"bad-character": true, "keyword-name": true}

// elsewhere are the codes whose advice is written in another section than what is at
// fault, or names several forms in one list, or has a sentence behind it.
var elsewhere = map[string]bool{"beyond-marks": true, "bad-mark": true, "no-throw": true, "law-assumed": true, "play-loses": true}

func TestAdviceCanBeWritten(t *testing.T) {
	known := usages()
	tried := 0
	for _, a := range advice(t) {
		for _, example := range examples(a.d.Detail) {
			if elsewhere[a.d.Code] || slices.Contains(known, strings.TrimRight(example, ". ")) || strings.HasPrefix(example, "shot ID") || strings.HasPrefix(example, "SHOT, aims") { // behind the words "as in"
				continue
			}
			tried++
			if remarks[a.d.Code] && len(faultsIn("let it = "+example, 1)) == 0 {
				continue
			}
			if !a.replaces(example) && !a.stands(example) {
				line := strings.Split(a.src, "\n")[a.d.Range.Start.Line-1]
				t.Errorf("%s: %s\n%s\n  of: %s\n  cannot be written there: %s", a.d.Code, a.d.Message, a.d.Detail, line, example)
			}
		}
	}
	if tried < 150 {
		t.Errorf("only %d examples", tried)
	}
}

// replaces reports whether an example can be written in place of what is at fault:
// what was told is gone, and nothing new is wrong with the line. The words about it
// may be part of the example.
func (a advised) replaces(example string) bool {
	from, to := a.d.Range.Start.Offset, a.d.Range.End.Offset
	if strings.HasPrefix(example, "{") { // within a text
		if at := inBraces.FindStringIndex(a.src[from:to]); at != nil {
			from, to = from+at[0], from+at[1]
		}
	}
	words := strings.Fields(example)
	lineAt := strings.LastIndexByte(a.src[:from], '\n') + 1
	lineEnd := from + max(strings.IndexByte(a.src[from:]+"\n", '\n'), to-from)
	starts, stops := []int{from}, []int{to}
	if i := strings.LastIndex(a.src[lineAt:from], strings.Trim(words[0], `"`)); i >= 0 {
		starts = append(starts, lineAt+i)
	}
	last := strings.Trim(words[len(words)-1], `"`)
	if i := strings.Index(a.src[from:lineEnd], last); i >= 0 {
		stops = append(stops, from+i+len(last))
	}
	for _, from := range starts {
		for _, to := range stops {
			if a.mends(a.src[:from]+example+a.src[to:], from, from+len(example)) {
				return true
			}
		}
	}
	return false
}

// mends reports whether the fault is gone from a text, and no other stands in what
// has been written that was not there. What follows may be wrong as well.
func (a advised) mends(src string, from, to int) bool {
	line := a.d.Range.Start.Line
	old := faultsIn(a.src, line)
	for _, d := range faultsIn(src, line) {
		if d.Code == "duplicate-clause" || d.Code == "conflicting-clauses" {
			continue // it can be read, beside what was said before
		}
		if d.Range.Start.Offset < to && !slices.ContainsFunc(old, func(o lang.Diagnostic) bool { return o.Code+o.Message == d.Code+d.Message }) {
			return false
		}
	}
	return !slices.ContainsFunc(a.told(src), func(d lang.Diagnostic) bool {
		return d.Code == a.d.Code && d.Range.File == a.d.Range.File && d.Range.Start.Offset >= from && d.Range.Start.Offset < to
	})
}

// faultsIn returns what cannot be read in a line.
func faultsIn(src string, line int) []lang.Diagnostic {
	_, diags := lang.Parse("plan.pull", []byte(src))
	return slices.DeleteFunc(diags, func(d lang.Diagnostic) bool { return d.Range.Start.Line != line })
}

// stands reports whether an example can be written as a line: in place of the line at
// fault, below it, or at the head of the file.
func (a advised) stands(example string) bool {
	lines := strings.Split(a.src, "\n")
	at := a.d.Range.Start.Line
	for _, made := range []struct {
		lines []string
		at    int
	}{
		{slices.Concat(lines[:at-1], []string{example}, lines[at:]), at},
		{slices.Concat(lines[:at], []string{example}, lines[at:]), at + 1},
		{slices.Concat([]string{example}, lines), 1},
	} {
		if len(faultsIn(strings.Join(made.lines, "\n"), made.at)) == 0 {
			return true
		}
	}
	return false
}

// what a cure says of where it belongs, which side somebody goes to, and which move of the
// camera is meant.
var (
	ofCamera = regexp.MustCompile(`^(?:dolly|track|boom|pan|tilt|zoom) over `)
	belongs  = regexp.MustCompile(`,? (?:before it|before the first line|after it|in place of its times|which makes it meter [^ ]+)$`)
	toSide   = regexp.MustCompile(`^(.+) ([0-9][^"]* (?:left|right))$`)
)

// Every cure that is printed can be written: as a clause of the line that it is
// told of, as one of a set-up or of the play of a lens, or as a line.
func TestCuresCanBeWritten(t *testing.T) {
	tried := map[string]bool{}
	for _, a := range advice(t) {
		for _, cure := range a.d.Cures {
			for part := range strings.SplitSeq(cure.Text, " and ") {
				part = belongs.ReplaceAllString(part, "")
				if ofCamera.MatchString(part) { // a clause of that movement
					_, part, _ = strings.Cut(part, " ")
				}
				side := toSide.ReplaceAllString(part, "subject $1 at 2 m, $2")
				tried[strings.Fields(part)[0]] = true
				ofCamera := len(faultsIn("camera A\n"+part, 2)) == 0 && (a.d.Code == "light" || a.d.Code == "diffraction")
				ofPlay := len(faultsIn("lens \"A\"\nplay 2 deg, "+part, 2)) == 0 // a clause of the lens's play
				if !ofCamera && !ofPlay && !a.stands(part) && !a.stands("with "+part) && !a.joins(part) && (side == part || !a.stands(side)) {
					t.Errorf("%s: %s\n  cannot be written: %s", a.d.Code, a.d.Message, part)
				}
			}
		}
	}
	for _, word := range []string{"over", "on", "stop", "because", "hold", "nd"} {
		if !tried[word] {
			t.Errorf("no cure begins with %s", word)
		}
	}
}

// joins reports whether a clause can be written into the line at fault, in place of
// one that begins with the same word. With a move of the camera it stands in place of all
// times.
func (a advised) joins(clause string) bool {
	lines := strings.Split(a.src, "\n")
	at := a.d.Range.Start.Line - 1
	line, _, _ := strings.Cut(lines[at], " #")
	head := strings.Fields(clause)[0]
	hidden, from := hideTexts(line), 0
	var kept []string
	for i := 0; i <= len(line); i++ {
		if i < len(line) && hidden[i] != ',' {
			continue
		}
		times := head == "with" && slices.Contains([]string{"on", "landing", "over", "smooth", "even"}, strings.Fields(line[from:i] + " -")[0])
		piece := strings.TrimSpace(line[from:i])
		if before, _, ok := strings.Cut(piece, " "+head+" "); ok && head == "over" { // as in pan left 5 deg over 2 s
			piece = before
		}
		if piece != "" && strings.Fields(piece)[0] != head && !times {
			kept = append(kept, piece)
		}
		from = i + 1
	}
	lines[at] = strings.Join(append(kept, clause), ", ")
	return len(faultsIn(strings.Join(lines, "\n"), at+1)) == 0
}
