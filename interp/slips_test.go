// How well one run tells of slips: a slip causes no error on a line that is
// sound, and what cannot be read of the set-up hides no other slip.

package interp_test

import (
	"cmp"
	"flag"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/testing/slips"
	"pullscore/lang"
)

// How many slips are made, of all kinds alike. After a change of what is told of slips,
// make more of them: go test ./interp -run Slips -slips 2000 -beside 400.
var (
	singleSlips = flag.Int("slips", 800, "slips of TestSlipsOnSoundLines")
	besideSlips = flag.Int("beside", 200, "slips of TestSlipsBesideABrokenSetUp")
)

// The shares, in percent, that may cause an error on a sound line, and that may
// stay hidden: twice what holds at the time of writing, so that the sense of a
// message may be mended without counting slips. 3 and 2 are the most that the
// project allows itself.
const mostOnSoundLines, mostHidden = 1, 0.5

// slipsSeed makes all runs alike.
const slipsSeed = 20

// A corpus is the files under testdata/slips: scenes that between them have
// every statement of the language, and their kit.
type corpus struct {
	scenes []string
	files  map[string][]string // the lines of each file
}

func slipCorpus(t *testing.T) corpus {
	t.Helper()
	c := corpus{files: map[string][]string{}}
	names, err := filepath.Glob("testdata/slips/*")
	if err != nil || len(names) == 0 {
		t.Fatal(names, err)
	}
	for _, name := range names {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		base := filepath.Base(name)
		c.files[base] = strings.Split(strings.TrimSuffix(string(src), "\n"), "\n")
		if filepath.Ext(base) == ".pull" && base != "kit.pull" {
			c.scenes = append(c.scenes, base)
		}
	}
	return c
}

// plans returns the plan files that a scene is made of.
func (c corpus) plans(scene string) []string {
	if slices.Contains(c.files[scene], `use "kit.pull"`) {
		return []string{scene, "kit.pull"}
	}
	return []string{scene}
}

// run interprets a scene with some files other than they are, and returns the
// errors.
func (c corpus) run(scene string, with map[string][]string) (errors []lang.Diagnostic, res *interp.Result) {
	files := maps.Clone(c.files)
	maps.Copy(files, with)
	var others []string
	for name, lines := range files {
		others = append(others, name, strings.Join(lines, "\n")+"\n")
	}
	res = interpret(scene, strings.Join(files[scene], "\n")+"\n", others...)
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			errors = append(errors, d)
		}
	}
	return errors, res
}

// unread are the words of scenes. While no scene is played, a slip in one is not told, so
// no plan here has them.
var unread = []string{
	"aims", "all", "as", "covers", "downstage", "eyes", "high", "line", "matches", "off", "origin", "places", "towards", "upstage",
}

// The corpus is sound, and has every word of the language.
func TestSlipsCorpus(t *testing.T) {
	c := slipCorpus(t)
	words := map[string]bool{}
	for name, lines := range c.files {
		if filepath.Ext(name) == ".pull" {
			for word := range strings.FieldsFuncSeq(strings.Join(lines, "\n"), func(r rune) bool { return !strings.ContainsRune("abcdefghijklmnopqrstuvwxyz", r) }) {
				words[word] = true
			}
		}
	}
	for _, scene := range c.scenes {
		errors, res := c.run(scene, nil)
		for _, d := range errors {
			t.Errorf("%s:%d: %s", d.Range.File, d.Range.Start.Line, d.Message)
		}
		if len(res.Plan.Shots) == 0 {
			t.Errorf("%s has no shot", scene)
		}
	}
	for _, word := range append(lang.Keywords(), lang.SoftWords()...) {
		if slices.Contains(unread, word) {
			continue
		}
		for part := range strings.SplitSeq(word, "'") {
			if !words[part] && word != "none" {
				t.Errorf("no plan has the word %s", word)
			}
		}
	}
}

// A made slip is one slip in one file of a scene.
type made struct {
	slips.Slip
	scene, file string
	was, is     []string // the file without it and with it
	kit         []string // the names that the kit declares
}

// makeSlip makes the n-th slip: a random scene, file and line, until one has
// room for it.
func (c corpus) makeSlip(r *rand.Rand, kind slips.Kind) made {
	for {
		scene := c.scenes[r.IntN(len(c.scenes))]
		plans := c.plans(scene)
		m := made{scene: scene, file: plans[r.IntN(len(plans))]}
		m.was = c.files[m.file]
		for _, line := range c.files["kit.pull"] {
			if isHeader(line) {
				_, name, _ := strings.Cut(line, " ")
				m.kit = append(m.kit, strings.Trim(name, `"`))
			}
		}
		if s, ok := slips.Make(r, kind, m.was); ok {
			m.Slip, m.is = s, s.Apply(m.was)
			return m
		}
	}
}

// touched reports whether a line of the file with the slip, from 1, belongs to a
// statement that the slip is in. The lines of a statement are joined by commas.
func (m made) touched(line int) bool {
	at := line - 1
	if at >= m.At && at < m.At+len(m.Is) {
		return true
	}
	was := m.Line(at)
	for i := range m.Was {
		first, last := statement(m.was, m.At+i)
		if was >= first && was <= last {
			return true
		}
	}
	return false
}

// statement returns the first and last line of the statement that a line is in.
func statement(lines []string, at int) (first, last int) {
	goesOn := func(i int) bool {
		line, _, _ := strings.Cut(lines[i], " #")
		return strings.HasSuffix(strings.TrimRight(line, " "), ",")
	}
	for first = at; first > 0 && goesOn(first-1); first-- {
	}
	for last = at; last+1 < len(lines) && goesOn(last); last++ {
	}
	return first, last
}

// split sorts the errors of a run by whether they are told of the slip's own
// statement.
func (m made) split(errors []lang.Diagnostic) (own, elsewhere []lang.Diagnostic) {
	for _, d := range errors {
		if d.Range.File == m.file && m.touched(d.Range.Start.Line) {
			own = append(own, d)
		} else {
			elsewhere = append(elsewhere, d)
		}
	}
	return own, elsewhere
}

// unjust returns the errors on sound lines that a slip causes though it need
// not. Where the slip itself is told as an error, there should be no other: what
// cannot be read is known to be missing. Where nothing is told of it, because it
// reads as something else or the line is gone, the plan is another plan, and
// these are errors of that plan:
//
//   - uses of the names and words that the slip took away, or of those that the
//     file gave that is not used any more,
//   - uses of a value that the slip has made another one,
//   - what a section lacks now that one of its lines is gone, told at its header
//     or where it is needed,
//   - what a computed shot comes to,
//   - one error, the first, in the section whose header is gone: its lines
//     now belong to another.
func (m made) unjust(own, elsewhere []lang.Diagnostic, sources map[string][]byte) []lang.Diagnostic {
	if len(own) > 0 {
		return elsewhere
	}
	lost := m.Words()
	switch first := keywordOf(m.Was[0]); {
	case first == "let":
		lost = append(lost, strings.Fields(m.Was[0])[1])
	case first == "use" && m.Kind == slips.Lost:
		lost = append(lost, m.kit...)
	}
	orphans := m.Kind == slips.Lost && isHeader(m.Was[0])
	return slices.DeleteFunc(slices.Clone(elsewhere), func(d lang.Diagnostic) bool {
		text := strings.ToLower(string(sources[d.Range.File][d.Range.Start.Offset:d.Range.End.Offset]) + d.Message)
		switch {
		case slices.ContainsFunc(lost, func(w string) bool { return strings.Contains(text, strings.ToLower(w)) }):
			return true
		case m.Kind == slips.Lost && slices.Contains(lacks, d.Code):
			return true
		case slices.Contains(ofShots, d.Code):
			return true
		case orphans:
			orphans = false
			return true
		}
		return false
	})
}

// lacks are the errors of what has to be said and is not.
var lacks = []string{"no-sensor", "no-focal", "no-stops", "no-closest", "no-camera", "no-lens", "no-stop", "lone-mark", "no-begins-at"}

// ofShots are the errors of a computed shot.
var ofShots = []string{
	"after-the-shot", "before-the-shot", "cannot-hold-both", "faster-than-a-hand", "inside-closest", "moves-overlap", "no-ring",
	"no-time-to-move", "not-on-subject", "racks-overlap", "runs-into", "stop-not-on-lens",
}

func isHeader(line string) bool {
	first, _, _ := strings.Cut(strings.TrimSpace(line), " ")
	return slices.Contains([]string{"camera", "lens", "puller", "move", "shot"}, first)
}

// A tally counts by kind and by class of offence.
type tally struct {
	all, bad [slips.Kinds]int
	classes  map[string]int
	samples  map[string]string
}

func (y *tally) offend(class, sample string) {
	if y.classes == nil {
		y.classes, y.samples = map[string]int{}, map[string]string{}
	}
	if y.classes[class]++; y.classes[class] == 1 {
		y.samples[class] = sample
	}
}

// report prints the shares by kind, and what offends most; it returns the share
// of all in percent.
func (y *tally) report(t *testing.T, what string, most float64) float64 {
	all, bad := 0, 0
	for kind := range slips.Kind(slips.Kinds) {
		all, bad = all+y.all[kind], bad+y.bad[kind]
		t.Logf("%-9s %4d slips, %3d %s (%.1f %%)", kind, y.all[kind], y.bad[kind], what, 100*float64(y.bad[kind])/float64(max(y.all[kind], 1)))
	}
	share := 100 * float64(bad) / float64(all)
	t.Logf("all       %4d slips, %3d %s: %.2f %%, at most %.2f %%", all, bad, what, share, most)
	if share > most || testing.Verbose() {
		classes := slices.SortedFunc(maps.Keys(y.classes), func(a, b string) int {
			return cmp.Or(y.classes[b]-y.classes[a], strings.Compare(a, b))
		})
		for _, class := range classes {
			t.Logf("%3d x %s\n%s", y.classes[class], class, y.samples[class])
		}
	}
	return share
}

// sample shows a slip and an error.
func (m made) sample(d lang.Diagnostic, sources map[string][]byte) string {
	line := "?"
	if lines := strings.Split(string(sources[d.Range.File]), "\n"); d.Range.Start.Line <= len(lines) {
		line = lines[d.Range.Start.Line-1]
	}
	return fmt.Sprintf("      %s:%d %q for %q\n      %s:%d %q: %s: %s", m.file, m.At+1, m.Is, m.Was, d.Range.File, d.Range.Start.Line, line, d.Code, d.Message)
}

// keywordOf is the word that tells what a line is.
func keywordOf(line string) string {
	first, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
	switch {
	case strings.HasSuffix(first, ":") || strings.HasPrefix(first, `"`):
		return "speech"
	case strings.HasPrefix(rest, "moves"):
		return "moves"
	case strings.Contains(first, "("):
		return "call"
	}
	return first
}

func TestSlipsOnSoundLines(t *testing.T) {
	c := slipCorpus(t)
	var y tally
	for n := range *singleSlips {
		r := rand.New(rand.NewPCG(slipsSeed, uint64(n)))
		m := c.makeSlip(r, slips.Kind(n%slips.Kinds))
		errors, res := c.run(m.scene, map[string][]string{m.file: m.is})
		own, elsewhere := m.split(errors)
		y.all[m.Kind]++
		if told := m.unjust(own, elsewhere, res.Sources); len(told) > 0 {
			y.bad[m.Kind]++
			y.offend(fmt.Sprintf("%v in `%s`: %s", m.Kind, keywordOf(m.Was[0]), told[0].Code), m.sample(told[0], res.Sources))
		}
	}
	if share := y.report(t, "with an error on a sound line", mostOnSoundLines); share > mostOnSoundLines {
		t.Errorf("%.2f %% of the slips cause an error on a sound line", share)
	}
}

// setUp are the statements that the rest of a plan depends on.
var setUp = []string{"camera", "lens", "puller", "move", "shot", "use", "with", "rate"}

// brokenSetUp makes a line of the set-up one that cannot be read, and returns
// the file with it. The line is told as an error, and is none of the slip's.
func (c corpus) brokenSetUp(r *rand.Rand, m made) (file string, at int, is []string) {
	for {
		plans := c.plans(m.scene)
		file = plans[r.IntN(len(plans))]
		lines := c.files[file]
		at = r.IntN(len(lines))
		first, _ := statement(lines, at)
		used := strings.HasPrefix(lines[at], "use ") // what cannot be found is not read
		switch {
		case !slices.Contains(setUp, keywordOf(lines[at])) || first != at || used && m.file != m.scene:
			continue
		case file == m.file && (m.touches(at) || m.touches(at+1) || m.touches(at-1)):
			continue
		}
		is = slices.Clone(lines)
		is[at] = slips.Break(r, lines[at])
		errors, _ := c.run(m.scene, map[string][]string{file: is})
		if slices.ContainsFunc(errors, func(d lang.Diagnostic) bool { return d.Range.File == file && d.Range.Start.Line == at+1 }) {
			return file, at, is
		}
	}
}

// touches reports whether a line of the file without the slip belongs to it.
func (m made) touches(at int) bool {
	for i := range m.Was {
		if first, last := statement(m.was, m.At+i); at >= first && at <= last {
			return true
		}
	}
	return false
}

func TestSlipsBesideABrokenSetUp(t *testing.T) {
	c := slipCorpus(t)
	var y tally
	for n, seed := 0, uint64(0); n < *besideSlips; seed++ {
		r := rand.New(rand.NewPCG(slipsSeed+1, seed))
		m := c.makeSlip(r, slips.Kind(n%int(slips.Lost))) // of a line that is gone nothing can be told
		alone, _ := c.run(m.scene, map[string][]string{m.file: m.is})
		own, _ := m.split(alone)
		if len(own) == 0 {
			continue
		}
		file, at, broken := c.brokenSetUp(r, m)
		with := map[string][]string{m.file: m.is, file: broken}
		if file == m.file {
			with[file] = m.Apply(broken)
		}
		both, res := c.run(m.scene, with)
		still, _ := m.split(both)
		n++
		y.all[m.Kind]++
		if !slices.ContainsFunc(still, func(d lang.Diagnostic) bool {
			return slices.ContainsFunc(own, func(o lang.Diagnostic) bool { return o.Code == d.Code })
		}) {
			y.bad[m.Kind]++
			y.offend(fmt.Sprintf("`%s` broken hides %s in `%s`", keywordOf(c.files[file][at]), own[0].Code, keywordOf(m.Was[0])),
				fmt.Sprintf("      %s:%d %q\n%s", file, at+1, broken[at], m.sample(own[0], res.Sources)))
		}
	}
	if share := y.report(t, "hidden", mostHidden); share > mostHidden {
		t.Errorf("%.2f %% of the slips are hidden by a broken set-up", share)
	}
}
