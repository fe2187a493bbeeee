// Checks read a shot and write nothing to it, and none hangs on another.

package interp_test

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/change"
	"pullscore/interp/checks"
	"pullscore/interp/cures"
	"pullscore/interp/shot"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// eachShot calls f for every shot of the plans of all corpora, and of some
// generated ones.
func eachShot(t *testing.T, f func(b *shot.Built, again cures.Again)) {
	t.Helper()
	n := 0
	all := func(src string, others ...string) {
		shots, again := interpret("plan.pull", src, others...).Built()
		for i, b := range shots {
			f(b, again[i])
			n++
		}
	}
	for _, plan := range allLines(t).plans {
		all(strings.Join(plan, "\n")+"\n", shuffledFiles...)
	}
	for i := range 60 {
		all(generated.Example(i))
	}
	if n < 100 {
		t.Errorf("only %d shots were looked at", n)
	}
}

// said writes findings with all that they hold, also what may cure them.
func said(found []checks.Finding) string {
	var b strings.Builder
	for _, f := range found {
		fmt.Fprintf(&b, "%+v item %d\n", f.Diagnostic, f.Item)
		if f.Tries != nil {
			for _, ch := range f.Tries() {
				fmt.Fprintln(&b, "  ", ch.Key())
			}
		}
	}
	return b.String()
}

func TestChecksStandAlone(t *testing.T) {
	told := map[string]bool{}
	eachShot(t, func(b *shot.Built, again cures.Again) {
		before := dump(reflect.ValueOf(b.Plan))
		var inList []string
		s := checks.Of(b)
		for _, c := range checks.All {
			found := c.Run(s)
			inList = append(inList, said(found))
			for _, f := range found {
				told[f.Code] = true
				if code, _ := rule.Named(f.Code); !slices.Contains(c.Codes, code) {
					t.Errorf("shot %s: a check of %v tells %s", b.Plan.ID, c.Codes, f.Code)
				}
			}
		}
		for i, c := range slices.Backward(checks.All) { // a second time, in another order, on a shot of its own
			if alone := said(c.Run(checks.Of(b))); alone != inList[i] {
				t.Errorf("shot %s: alone the check of %v tells\n%sand in the list\n%s", b.Plan.ID, c.Codes, alone, inList[i])
			}
		}
		first, second := said(cures.Run(b, again, unwritten)), said(cures.Run(b, again, unwritten))
		if first != second {
			t.Errorf("shot %s: a second run tells\n%sand the first\n%s", b.Plan.ID, second, first)
		}
		if after := dump(reflect.ValueOf(b.Plan)); after != before {
			t.Errorf("shot %s: the checks have changed it", b.Plan.ID)
		}
	})
	if len(told) < 30 {
		t.Errorf("only %d codes were told", len(told))
	}
}

// unwritten writes no cures.
func unwritten(change.Change, units.Style) []lang.Edit { return nil }

// A shot with hundreds of findings builds no more statements than a shot with a
// few, and each change once.
func TestCuresAreBounded(t *testing.T) {
	const most = 60_000
	for _, racks := range []int{10, 100, 1000} {
		var src strings.Builder
		src.WriteString("plan \"t\"\nuse \"kit.pull\"\nsubject ANN at 2 m\nsubject BOB at 3 m\nshot 1\n  with camera A, lens \"75\", stop f/2.8\n  start on ANN\n")
		for i := range racks {
			fmt.Fprintf(&src, "  rack to %s, over %d.%d s\n", []string{"BOB", "ANN"}[i%2], i%2, i%7+1)
		}
		shots, again := interpret("plan.pull", src.String()).Built()
		built, tried := 0, map[string]int{}
		found := cures.Run(shots[0], func(ch change.Change) (*shot.Built, bool) {
			b, ok := again[0](ch)
			built += len(b.Items)
			tried[ch.Key()]++
			return b, ok
		}, unwritten)
		if len(found) < racks {
			t.Errorf("%d racks have only %d findings", racks, len(found))
		}
		if limit := most + 10*(racks+10); built > limit {
			t.Errorf("%d racks: %d statements were built anew", racks, built)
		}
		for key, n := range tried {
			if n > 1 {
				t.Errorf("%d racks: built %d times: %s", racks, n, key)
			}
		}
	}
}

// dump writes a plan with all that it holds. Plans have no circles.
func dump(v reflect.Value) string {
	var b strings.Builder
	var write func(v reflect.Value)
	write = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Pointer, reflect.Interface:
			if v.IsNil() {
				b.WriteString("nil")
				return
			}
			write(v.Elem())
		case reflect.Struct:
			for i := range v.NumField() {
				b.WriteString(v.Type().Field(i).Name + "{")
				write(v.Field(i))
				b.WriteString("}")
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				write(v.Index(i))
				b.WriteString(",")
			}
		default:
			fmt.Fprint(&b, v)
		}
	}
	write(v)
	return b.String()
}

// An imperial plan is told feet and inches, and its cures can be typed into it.
func TestFindingsFollowUnits(t *testing.T) {
	const src = `plan "t"
units imperial
use "kit.pull"
subject ANN at 3'3", 4 ft right
subject BOB at 12 ft, 6 ft left, deep 1 in
shot 1
  with camera A, lens "75", stop f/2
  start on ANN
  rack to BOB, over 2 s, because "he is there"
  rack to 1 ft, over 1 s
`
	res := interpret("plan.pull", src)
	metric := regexp.MustCompile(`[0-9] (mm|cm|m)\b`)
	cures := 0
	for _, d := range res.Findings {
		// A lens's own marks are named as they are engraved.
		if text := d.Message + " " + d.Detail; metric.MatchString(text) && d.Code != "few-marks" {
			t.Errorf("%s: %s", d.Code, text)
		}
		if d.Code != "out-of-frame" {
			continue
		}
		for _, c := range d.Cures {
			cures++
			who, side, _ := strings.Cut(c.Text, " ")
			lines := strings.Split(src, "\n")
			i := index(lines, "subject "+who+" ")
			lines[i] = regexp.MustCompile(`, [0-9] ft (left|right)`).ReplaceAllLiteralString(lines[i], ", "+side)
			again := interpret("plan.pull", strings.Join(lines, "\n"))
			for _, e := range again.Findings {
				if e.Severity == lang.Error && e.Code != "inside-closest" || e.Code == d.Code && strings.HasPrefix(e.Message, who+" ") {
					t.Errorf("%q does not cure %s: %s", c.Text, d.Message, e.Message)
				}
			}
		}
	}
	if cures < 2 {
		t.Errorf("only %d places were offered: %v", cures, res.Findings)
	}
}
