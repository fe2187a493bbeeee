// Plans that mix any line of any section: whatever stands where it does not
// belong, nothing panics.

package interp_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"pullscore/lang"
	"pullscore/lang/testing/chunk"
)

// How many plans are mixed. PULLSCORE_SHUFFLES sets another number, to be tried
// by hand: 1000000 take five to ten minutes on two cores.
const (
	shuffles    = 1500
	shufflesVar = "PULLSCORE_SHUFFLES"
	shuffleSeed = 11
)

// crashed are plans that have panicked, as small as they can be.
var crashed = []string{
	"shot 1\nlet near = 2 m\nrack to near, over 2 s",                                                                 // a let in a shot, where a value is wanted
	"use \"kit.pull\"\nshot 1\nwith camera A, lens \"75\", stop f/8\nlet late = 2 s\nrack to 2 m, on late, over 1 s", // the same, where a moment is
	"use \"kit.pull\"\nsubject BO at 5'13\"\nshot 1\nwith camera A, lens \"75\", stop f/8\nfollow BO\nrack to 2",     // a follow of somebody whose line cannot be read
}

// stillCrash names the functions in which those plans still panic. It is to be
// empty: whoever mends one takes it out.
var stillCrash = []string{}

// crashesIn reports whether a panic was in a function, whatever its package and
// the case of its letters.
func crashesIn(what, function string) bool {
	return strings.Contains(strings.ToLower(what), function+",")
}

// A pool is the plans that lines are taken from, each as its lines.
type pool struct {
	plans [][]string
	lines []string // all lines of all plans
}

var pullSample = regexp.MustCompile("(?ms)^```pull(?:-error)?[^\n]*\n(.*?)^```$")

// allLines gathers the plans of all corpora, faulty ones too: the examples, what
// tests of the language and of the findings read, and the samples of the
// reference.
func allLines(t *testing.T) *pool {
	t.Helper()
	p := &pool{}
	add := func(src string) {
		var list []string
		for line := range strings.Lines(src) {
			if line = strings.TrimRight(line, "\n"); strings.TrimSpace(line) != "" {
				list = append(list, line)
			}
		}
		if len(list) > 0 {
			p.plans, p.lines = append(p.plans, list), append(p.lines, list...)
		}
	}
	for _, pattern := range []string{
		"testdata/findings/*.pull", "testdata/slips/*.pull", "../examples/*.pull", "../lang/testdata/*.pull", "../lang/testdata/errors/*.pull",
	} {
		files, err := filepath.Glob(pattern)
		if err != nil || len(files) == 0 {
			t.Fatal(pattern, files, err)
		}
		for _, name := range files {
			chunks, err := chunk.Read(name)
			if err != nil {
				t.Fatal(err)
			}
			for _, c := range chunks {
				add(string(c.Source))
			}
		}
	}
	reference, err := os.ReadFile("../lang/REFERENCE.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range pullSample.FindAllSubmatch(reference, -1) {
		add(string(m[1]))
	}
	add(kitText)
	add(unreadable)
	if len(p.plans) < 100 || len(p.lines) < 1500 {
		t.Fatalf("only %d plans with %d lines", len(p.plans), len(p.lines))
	}
	return p
}

// mix makes a plan out of the pool in one of four ways, from wild to tame: the
// tame ones get further, since their names are known.
func (p *pool) mix(r *rand.Rand) []string {
	plan := func() []string { return slices.Clone(p.plans[r.IntN(len(p.plans))]) }
	some := func(n int) (list []string) {
		for range n {
			list = append(list, p.lines[r.IntN(len(p.lines))])
		}
		return list
	}
	shuffle := func(list []string) []string {
		r.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
		return list
	}
	switch r.IntN(4) {
	case 0: // any lines
		return some(1 + r.IntN(40))
	case 1: // one plan in another order, with some lines of others
		return shuffle(append(plan(), some(r.IntN(6))...))
	case 2: // one plan with lines of any at any place
		list := plan()
		for _, line := range some(1 + r.IntN(8)) {
			list = slices.Insert(list, r.IntN(len(list)+1), line)
		}
		return list
	}
	// A plan whose lines are moved, double or gone.
	list := plan()
	for range 1 + r.IntN(6) {
		from, to := r.IntN(len(list)), r.IntN(len(list))
		line := list[from]
		switch r.IntN(3) {
		case 0:
			list = slices.Insert(slices.Delete(list, from, from+1), min(to, len(list)-1), line)
		case 1:
			list = slices.Insert(list, to, line)
		case 2:
			if len(list) > 1 {
				list = slices.Delete(list, from, from+1)
			}
		}
	}
	return list
}

// files are what the mixed plans may name.
var shuffledFiles = slices.Concat(others, []string{
	"harbour.pull", "subject NADIA at 2 m\n", "cut-2.edl", "", "cut-2.srt", "", "mira.csv", "travel_deg,error_deg\n60,1\n",
})

// A failed is what a test of a plan ended in.
type failed string

// Fatalf ends the check of one plan.
func (failed) Fatalf(format string, args ...any) { panic(failed(fmt.Sprintf(format, args...))) }

// crash interprets a plan and checks what comes of it. It returns what went
// wrong, with the place in the code, or "".
func crash(list []string) (what string) {
	defer func() {
		switch e := recover().(type) {
		case nil:
		case failed:
			what = "insane: " + string(e)
		default:
			what = fmt.Sprintf("%v at %s", e, panicAt(debug.Stack()))
		}
	}()
	src := strings.Join(list, "\n") + "\n"
	lang.Format([]byte(src))
	checkSane(failed(""), interpret("plan.pull", src, shuffledFiles...))
	return ""
}

var ourFrame = regexp.MustCompile(`(?m)^(pullscore/[^\n]*)\(.*\n\s+\S*/([^/\s]+\.go:[0-9]+)`)

// panicAt finds the first of our functions below the panic.
func panicAt(stack []byte) string {
	_, below, _ := strings.Cut(string(stack), "panic(")
	if m := ourFrame.FindStringSubmatch(below); m != nil {
		return m[1] + ", " + m[2]
	}
	return string(stack)
}

// smallest takes lines away as long as the same goes wrong.
func smallest(list []string, what string) []string {
	for size := len(list) / 2; size > 0; size /= 2 {
		for at := 0; at+size <= len(list); {
			if less := slices.Delete(slices.Clone(list), at, at+size); crash(less) == what {
				list = less
			} else {
				at += size
			}
		}
	}
	return list
}

func TestPlansThatPanicked(t *testing.T) {
	left := slices.Clone(stillCrash)
	for _, src := range crashed {
		what := crash(strings.Split(src, "\n"))
		known := slices.IndexFunc(left, func(f string) bool { return crashesIn(what, f) })
		switch {
		case what == "":
		case known < 0:
			t.Errorf("%s\n%s", what, src)
		default:
			t.Logf("still: %s", what)
			left = slices.Delete(left, known, known+1)
		}
	}
	for _, f := range left {
		t.Errorf("no plan panics in %q any more: take it out of stillCrash", f)
	}
}

func TestShuffledPlansDoNotPanic(t *testing.T) {
	p := allLines(t)
	n := shuffles
	if s := os.Getenv(shufflesVar); s != "" {
		var err error
		if n, err = strconv.Atoi(s); err != nil {
			t.Fatalf("%s: %v", shufflesVar, err)
		}
	}
	const workers = 2
	var group sync.WaitGroup
	var mu sync.Mutex
	found := map[string]int{}
	for w := range workers {
		group.Go(func() {
			for i := w; i < n; i += workers {
				list := p.mix(rand.New(rand.NewPCG(shuffleSeed, uint64(i))))
				what := crash(list)
				if what == "" || slices.ContainsFunc(stillCrash, func(f string) bool { return crashesIn(what, f) }) {
					continue
				}
				mu.Lock()
				found[what]++
				first := found[what] == 1
				mu.Unlock()
				if first {
					t.Errorf("plan %d: %s\n%s", i, what, strings.Join(smallest(list, what), "\n"))
				}
			}
		})
	}
	group.Wait()
	for what, times := range found {
		t.Logf("%d x %s", times, what)
	}
}
