// A cache of what files were parsed to changes nothing but the time.

package interp_test

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"pullscore/interp"
	"pullscore/interp/testing/edits"
	"pullscore/lang/timecode"
)

// comesTo writes all that a result says.
func comesTo(t *testing.T, res *interp.Result) string {
	t.Helper()
	text, err := json.Marshal([]any{res.Plan, res.Findings, res.Files, res.Revision})
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// cutTrees returns plans of a talk that follow cuts of it, as cutters make them.
func cutTrees(t *testing.T) (list []tree) {
	t.Helper()
	for _, e := range edits.All {
		rate, err := timecode.ParseRate(e.Rate)
		if err != nil {
			t.Fatal(err)
		}
		cut, err := e.List(rate)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, tree{[]string{"plan.pull"}, map[string]string{
			"plan.pull": edits.Plan(e.Rate, "cut.edl"), "kit.pull": kitText, "cut.edl": cut, "cut.srt": e.Subtitles(rate),
		}})
	}
	return list
}

// Every plan is the same with a cache that has seen all others, and those that follow a
// cut also with one that has seen themselves.
func TestCacheChangesNothing(t *testing.T) {
	cache := interp.NewCache(64 << 20)
	for _, f := range slices.Concat(cutTrees(t), trees(t)) {
		want, times := f.interpret(), 1
		if strings.Contains(f.texts[f.names[0]], "\nedit ") {
			times = 2
		}
		for range times {
			got := interp.Interpret(f.names[0], []byte(f.texts[f.names[0]]), interp.Options{ReadFile: f.read, Cache: cache})
			if a, b := comesTo(t, want), comesTo(t, got); a != b {
				t.Errorf("%s:\n%s\nand not\n%s", f.texts[f.names[0]], b, a)
			}
			if !reflect.DeepEqual(got.Sources, want.Sources) {
				t.Errorf("%s: other sources", f.names[0])
			}
		}
	}
}

const typedPlan = `plan "Typed"
use "kit.pull"
edit "cut.srt"
edit "cut.edl"
clips "clips.ale"
script "page.fountain"
subject NORA at 1.7 m
voice OTTO
shot 1
  with camera A, lens "75", stop f/8, puller INES
  start on NORA
  NORA: "Where is the rope?"
  OTTO: "On the quay, by the lamp."
puller INES
  takes "log.csv"
`

var typedFiles = map[string]string{
	"kit.pull":      kitText,
	"cut.srt":       "1\n00:00:01,000 --> 00:00:02,500\nWhere is the rope?\n\n2\n00:00:03,000 --> 00:00:05,000\nOn the quay, by the lamp.\n",
	"cut.edl":       "TITLE: A\n\n001  AX       V     C        01:00:00:00 01:00:08:00 01:00:00:00 01:00:08:00\n* FROM CLIP NAME: 1\n",
	"clips.ale":     "Heading\nFIELD_DELIM\tTABS\nFPS\t24\n\nColumn\nName\tStart\tEnd\n\nData\n1\t01:00:00:00\t01:00:08:00\n",
	"page.fountain": "INT. QUAY - NIGHT\n\nNORA\nWhere is the rope?\n\nOTTO\nOn the quay, by the lamp.\n",
	"log.csv":       "travel_deg,time_s,error_deg\n90,1.2,1\n80,1.1,-1\n70,0.9,0.5\n",
}

// typed reads the plan after each letter of a line and of a number.
func typed(t *testing.T, read func(plan string) *interp.Result) {
	t.Helper()
	for _, edit := range [][2]string{{`by the lamp."`, `under the old lantern by the harbour wall."`}, {"1.7 m", "1.75 m"}} {
		before, after, ok := strings.Cut(typedPlan, edit[0])
		if !ok {
			t.Fatal(edit)
		}
		for i := range len(edit[1]) {
			read(before + edit[1][:i+1] + after)
		}
	}
}

// Whatever is typed, the files beside the plan are parsed once each.
func TestCacheParsesOnce(t *testing.T) {
	cache, read := interp.NewCache(1<<20), 0
	opt := interp.Options{Cache: cache, ReadFile: func(path string) ([]byte, error) {
		if text, ok := typedFiles[path]; ok {
			return []byte(text), nil // other bytes each time
		}
		return nil, fmt.Errorf("no %s", path)
	}}
	plain := opt
	plain.Cache = nil
	typed(t, func(plan string) *interp.Result {
		read++
		res := interp.Interpret("plan.pull", []byte(plan), opt)
		if read%10 == 0 {
			if a, b := comesTo(t, interp.Interpret("plan.pull", []byte(plan), plain)), comesTo(t, res); a != b {
				t.Errorf("%s:\n%s\nand not\n%s", plan, b, a)
			}
		}
		return res
	})
	// The kit and the log once; of the page, the clips, the list and the subtitles the
	// text, and what it says. The subtitles once more: as long as a line lacks its last
	// quote its speaker is not known, whom labels may name.
	if want := 2 + 4*2 + 1; cache.Parses() != want {
		t.Errorf("%d parses in %d readings, not %d", cache.Parses(), read, want)
	}
	parses := cache.Parses()
	typedFiles := map[string]string{"cut.srt": strings.Replace(typedFiles["cut.srt"], "rope", "boat", 1)}
	opt.ReadFile = func(path string) ([]byte, error) {
		if text, ok := typedFiles[path]; ok {
			return []byte(text), nil
		}
		return plain.ReadFile(path)
	}
	res := interp.Interpret("plan.pull", []byte(typedPlan), opt)
	if cache.Parses() != parses+2 {
		t.Errorf("a cut that has changed takes %d parses", cache.Parses()-parses)
	}
	if a, b := comesTo(t, interp.Interpret("plan.pull", []byte(typedPlan), interp.Options{ReadFile: opt.ReadFile})), comesTo(t, res); a != b {
		t.Errorf("after a change:\n%s\nand not\n%s", b, a)
	}
}

// What was used least recently goes, and of one file all but the last two contents.
func TestCacheIsBounded(t *testing.T) {
	kit := func(n int) []byte {
		return []byte(fmt.Sprintf("let late = %d s\n# %s\n", n, strings.Repeat("x", 1000)))
	}
	cache := interp.NewCache(10_000)
	for i := range 40 {
		interp.Interpret("plan.pull", []byte("use \"kit.pull\"\n"), interp.Options{Cache: cache, ReadFile: func(string) ([]byte, error) { return kit(i), nil }})
	}
	if cache.Size() > 2200 {
		t.Errorf("contents of one file take %d bytes", cache.Size())
	}
	small := interp.NewCache(100)
	for range 2 {
		interp.Interpret("plan.pull", []byte("use \"kit.pull\"\n"), interp.Options{Cache: small, ReadFile: func(string) ([]byte, error) { return kit(1), nil }})
	}
	if small.Size() != 0 || small.Parses() != 0 {
		t.Errorf("a text larger than the cache takes %d bytes of it", small.Size())
	}
	read := func(names ...string) int {
		before := cache.Parses()
		for _, name := range names {
			interp.Interpret("plan.pull", []byte(fmt.Sprintf("use %q\n", name)), interp.Options{Cache: cache, ReadFile: func(string) ([]byte, error) { return kit(7), nil }})
		}
		return cache.Parses() - before
	}
	var all []string
	for i := range 40 {
		all = append(all, fmt.Sprintf("kit%d.pull", i))
		read(all[i])
		read(all[0]) // is used all the time
	}
	if cache.Size() > 10_000 {
		t.Errorf("%d bytes are kept, and 10000 may be", cache.Size())
	}
	if n := read(all[0], all[39], all[38]); n != 0 {
		t.Errorf("%d of those used last are gone", n)
	}
	if n := read(all[1]); n != 1 {
		t.Error("one that was used long ago is kept")
	}
}

// Several read with one cache at a time, on the same files and on others.
func TestCacheIsShared(t *testing.T) {
	cache := interp.NewCache(1 << 16)
	list := trees(t)
	list = slices.DeleteFunc(list, func(f tree) bool { return !strings.Contains(f.texts[f.names[0]], "edit ") })
	want := make([]string, len(list))
	for i, f := range list {
		want[i] = comesTo(t, f.interpret())
	}
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			for i, f := range list {
				res := interp.Interpret(f.names[0], []byte(f.texts[f.names[0]]), interp.Options{ReadFile: f.read, Cache: cache})
				if text, err := json.Marshal([]any{res.Plan, res.Findings, res.Files, res.Revision}); err != nil || string(text) != want[i] {
					t.Errorf("%s: %v %s", f.names[0], err, text)
				}
			}
		})
	}
	all.Wait()
}
