// A puller's log of takes: the hand that it shows stands in for the published
// one. What the puller's section says itself wins over the log.

package film

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"

	"pullscore/interp/kit"
	"pullscore/interp/load"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/interp/units"
	"pullscore/lang"
)

// faultsTold is how many faults of a log a plan is told of.
const faultsTold = 5

// learn fits the puller's hand to its log; again is true where that has to wait for
// the plan.
func (r *reader) learn(u *kit.Puller, said *lang.Takes, sec *lang.Section) (again bool) {
	if !load.NamesFile(said.File, r.Reporter) {
		return false
	}
	path := r.loader.Beside(said.Range().File, said.File.Value)
	u.Log = path
	if !slices.Contains(r.loader.Files, path) {
		r.loader.Files = append(r.loader.Files, path)
	}
	data, err := r.loader.Opt.ReadFile(path)
	if err != nil {
		r.Fail(said.File.Range(), "no-such-file", fmt.Sprintf("cannot read %q", said.File.Value), names.Reason(path, err))
		return false
	}
	sample, faults := r.sample(u, path, data)
	if r.before == nil && (faults.Unplaced > 0 || sample.NamesPulls()) {
		return true // its pulls, their angles and rims are known once the plan is built
	}
	r.tellLog(u, said, sample, &faults)
	if sample.Scores.N > 0 {
		r.learnFrom(u, said, sec, sample)
	}
	return false
}

// sample reads a log. The rows that say where the focus landed need their pull:
// those of another plan are counted, and not at fault.
func (r *reader) sample(u *kit.Puller, path string, data []byte) (*takes.Sample, takes.Faults) {
	var plans []*plan.Plan
	if r.before != nil {
		plans = append(plans, r.before)
	}
	s := takes.NewSample(takes.Options{Puller: u.Name, Grip: u.Hand.Grip})
	faults, _ := s.ReadLog(takes.NewReader(bytes.NewReader(data), path, plans...)) // bytes are read without an error
	return s, faults
}

// tellLog tells what is wrong with a log, and where.
func (r *reader) tellLog(u *kit.Puller, said *lang.Takes, s *takes.Sample, faults *takes.Faults) {
	name := said.File.Value
	if faults.N > 0 {
		d := lang.Diagnostic{
			Code: "broken-log", Severity: lang.Warning, Range: said.File.Range(),
			Message: fmt.Sprintf("%s in %q cannot be used", units.Count(faults.N, "row"), name),
			Detail:  fmt.Sprintf("All others count. The first: %s.", faults.List[0].Error()),
		}
		if s.Scores.N == 0 {
			d.Severity, d.Message = lang.Error, fmt.Sprintf("no row in %q can be used", name)
			d.Detail = fmt.Sprintf("The first fault: %s.", faults.List[0].Error())
		}
		for _, f := range faults.List[:min(len(faults.List), faultsTold)] {
			at := lang.Pos{Line: f.Line, Column: f.Column}
			d.Related = append(d.Related, lang.Related{Message: f.Message, Range: lang.Range{File: f.File, Start: at, End: at}})
		}
		r.Report(d)
		return
	}
	if s.Scores.N == 0 {
		r.Report(lang.Diagnostic{
			Code: "no-takes", Severity: lang.Warning, Range: said.File.Range(),
			Message: fmt.Sprintf("%q has no takes of %s", name, u.Name),
			Detail:  fmt.Sprintf("Left out: %s of other pullers, %d that name pulls of other plans.", units.Count(s.Others, "take"), faults.Unplaced),
		})
	}
}

// learnFrom gives the puller what the log shows, but for what its section says
// itself, and notes where the numbers come from.
func (r *reader) learnFrom(u *kit.Puller, said *lang.Takes, sec *lang.Section, s *takes.Sample) {
	f := s.Fit()
	fitted := f.Hand(u.Hand)
	value, spans := "", ""
	learn := func(to *float64, v, lo, hi float64, text, span string) {
		*to = min(max(v, lo), hi)
		if value != "" {
			value, spans = value+", ", spans+", "
		}
		value, spans = value+text, spans+span
	}
	if !names.Has[*lang.Hand](sec) {
		learn(&u.Hand.Throughput, fitted.Throughput, 0.2, 20,
			units.Decimal(f.Throughput.Value, 2)+" bit/s", units.Decimal(f.Throughput.Lo, 2)+" to "+units.Decimal(f.Throughput.Hi, 2))
	}
	if !names.Has[*lang.Spread](sec) {
		mm := f.RimSpread() * 1000 / f.Rim.Value // of a degree
		learn(&u.Hand.RimSpread, fitted.RimSpread, 1e-5, 0.02,
			units.Decimal(f.Rim.Value*mm, 2)+" mm at the rim", units.Decimal(f.Rim.Lo*mm, 2)+" to "+units.Decimal(f.Rim.Hi*mm, 2))
	}
	if !names.Has[*lang.Bias](sec) {
		learn(&u.Hand.Bias, fitted.Bias, -30, 30, "bias "+units.Style{}.AngleTo(f.Bias.Value, 2), units.Decimal(f.Bias.Lo, 2)+" to "+units.Decimal(f.Bias.Hi, 2))
	}
	if value == "" {
		return // the section says all that a log could
	}
	from := fmt.Sprintf("%s of %s", units.Count(s.Scores.N, "take"), filepath.Base(filepath.FromSlash(said.File.Value)))
	u.Defaults = append(u.Defaults, kit.Missing{Name: "puller " + u.Name, Value: value, Why: fmt.Sprintf("fitted to %s; 90 %% lie within %s", from, spans)})
	if s.Scores.N < takes.Enough {
		r.Report(lang.Diagnostic{
			Code: "few-takes", Severity: lang.Note, Range: said.File.Range(),
			Message: fmt.Sprintf("%s are too few to know the hand of %s by", from, u.Name),
			Detail:  fmt.Sprintf("The fit gives %s; its 90 %% interval is %s. From %d takes on this note goes away.", value, spans, takes.Enough),
			Figures: []lang.Figure{{Name: "takes", Value: float64(s.Scores.N)}, {Name: "wanted_takes", Value: takes.Enough}},
		})
	}
}
