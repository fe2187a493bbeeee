// Checks read a shot and write nothing to it, and none hangs on another.

package interp_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/checks"
	"pullscore/interp/shot"
	"pullscore/lang/rule"
)

// eachShot calls f for every shot of the plans of all corpora, and of some
// generated ones.
func eachShot(t *testing.T, f func(b *shot.Built, again checks.Again)) {
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
	eachShot(t, func(b *shot.Built, again checks.Again) {
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
		first, second := said(checks.Run(b, again)), said(checks.Run(b, again))
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
