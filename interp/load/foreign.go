// Somebody else's texts: cuts and script pages.

package load

import (
	"fmt"

	"pullscore/interp/names"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/lines"
)

// NamesFile reports whether a statement names a file; a text without a letter is
// told.
func NamesFile(said *lang.Text, told names.Reporter) bool {
	if said != nil && said.Value == "" {
		told.Fail(said.Range(), "no-such-file", "no file is named here", "Write its name between the quotes, relative to this file.")
	}
	return said != nil && said.Value != ""
}

// Open loads a text that a statement names; nil where it cannot, which
// is reported.
func (l *Loader) Open(said *lang.Text, path string, told names.Reporter) *Foreign {
	if l.Units[path] != nil {
		told.Fail(said.Range(), "wrong-kind", fmt.Sprintf("%q is a plan", said.Value), "")
		return nil
	}
	f := l.Foreign(path)
	if f.Err != nil {
		told.Fail(said.Range(), "no-such-file", fmt.Sprintf("cannot read %q", said.Value), names.Reason(path, f.Err))
		return nil
	}
	return f
}

// passedOn is how many faults of another's file are told one by one.
const passedOn = 20

// PassOn tells what is wrong in somebody else's file, each at its place there.
func (f *Foreign) PassOn(said *lang.Text, diags []lang.Diagnostic, told names.Reporter) {
	all := append(f.Diags[:len(f.Diags):len(f.Diags)], diags...)
	for _, d := range all[:min(len(all), passedOn)] {
		told.Report(d)
	}
	if len(all) <= passedOn {
		return
	}
	more := len(all)
	if last := all[more-1]; last.Code == lines.MoreFaults { // stands for many
		more += int(last.Figures[0].Value) - 1
	}
	worst, _ := lang.Worst(all[passedOn:])
	told.Report(lang.Diagnostic{
		Code: lines.MoreFaults, Severity: worst, Range: said.Range(),
		Message: fmt.Sprintf("%s in %q", units.Count(more-passedOn, "more fault"), said.Value),
		Detail:  fmt.Sprintf("Pullscore lists the first %d.", passedOn),
		Figures: []lang.Figure{{Name: "faults", Value: float64(more)}},
	})
}
