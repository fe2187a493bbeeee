// A puller's log of takes: the hand that it shows stands in for the published
// one. What the puller's section says itself wins over the log.

package interp

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/lang"
)

// faultsTold is how many faults of a log a plan is told of.
const faultsTold = 5

// learn fits the puller's hand to its log.
func (p *program) learn(u *puller, said *lang.Takes, sec *lang.Section) {
	if said.File == nil || said.File.Value == "" {
		return
	}
	path := p.loader.beside(said.Range().File, said.File.Value)
	u.log = path
	if !slices.Contains(p.loader.files, path) {
		p.loader.files = append(p.loader.files, path)
	}
	data, err := p.loader.opt.ReadFile(path)
	if err != nil {
		p.fail(said.File.Range(), "no-such-file", fmt.Sprintf("cannot read %q", said.File.Value), reason(err))
		return
	}
	sample, faults := p.sample(u, path, data)
	if p.before == nil && (faults.Unplaced > 0 || sample.NamesPulls()) {
		p.again = true // its pulls, their angles and rims are known once the plan is built
		return
	}
	p.tellLog(u, said, sample, &faults)
	if sample.Scores.N > 0 {
		p.learnFrom(u, said, sec, sample)
	}
}

// sample reads a log. The rows that say where the focus landed need their pull:
// those of another plan are counted, and not at fault.
func (p *program) sample(u *puller, path string, data []byte) (*takes.Sample, takes.Faults) {
	var plans []*plan.Plan
	if p.before != nil {
		plans = append(plans, p.before)
	}
	s := takes.NewSample(takes.Options{Puller: u.name, Grip: u.hand.Grip})
	r := takes.NewReader(bytes.NewReader(data), path, plans...)
	faults, _ := s.ReadLog(r) // bytes are read without an error
	return s, faults
}

// tellLog tells what is wrong with a log, and where.
func (p *program) tellLog(u *puller, said *lang.Takes, s *takes.Sample, faults *takes.Faults) {
	name := said.File.Value
	if faults.N > 0 {
		d := lang.Diagnostic{
			Code: "broken-log", Severity: lang.Warning, Range: said.File.Range(),
			Message: fmt.Sprintf("%s in %q cannot be used", count(faults.N, "row"), name),
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
		p.report(d)
		return
	}
	if s.Scores.N == 0 {
		p.report(lang.Diagnostic{
			Code: "no-takes", Severity: lang.Warning, Range: said.File.Range(),
			Message: fmt.Sprintf("%q has no takes of %s", name, u.name),
			Detail:  fmt.Sprintf("Left out: %s of other pullers, %d that name pulls of other plans.", count(s.Others, "take"), faults.Unplaced),
		})
	}
}

// learnFrom gives the puller what the log shows, but for what its section says
// itself, and notes where the numbers come from.
func (p *program) learnFrom(u *puller, said *lang.Takes, sec *lang.Section, s *takes.Sample) {
	f := s.Fit()
	fitted := f.Hand(u.hand)
	value, spans := "", ""
	learn := func(to *float64, v, lo, hi float64, text, span string) {
		*to = min(max(v, lo), hi)
		if value != "" {
			value, spans = value+", ", spans+", "
		}
		value, spans = value+text, spans+span
	}
	if !has[*lang.Hand](sec) {
		learn(&u.hand.Throughput, fitted.Throughput, 0.2, 20,
			hundredths(f.Throughput.Value)+" bit/s", hundredths(f.Throughput.Lo)+" to "+hundredths(f.Throughput.Hi))
	}
	if !has[*lang.Spread](sec) {
		mm := f.RimSpread() * 1000 / f.Rim.Value // of a degree
		learn(&u.hand.RimSpread, fitted.RimSpread, 1e-5, 0.02,
			hundredths(f.Rim.Value*mm)+" mm at the rim", hundredths(f.Rim.Lo*mm)+" to "+hundredths(f.Rim.Hi*mm))
	}
	if !has[*lang.Bias](sec) {
		learn(&u.hand.Bias, fitted.Bias, -30, 30, "bias "+hundredths(f.Bias.Value)+" deg", hundredths(f.Bias.Lo)+" to "+hundredths(f.Bias.Hi))
	}
	if value == "" {
		return // the section says all that a log could
	}
	from := fmt.Sprintf("%s of %s", count(s.Scores.N, "take"), filepath.Base(filepath.FromSlash(said.File.Value)))
	u.defaults = append(u.defaults, missing{"puller " + u.name, value, fmt.Sprintf("fitted to %s; 90 %% lie within %s", from, spans)})
	if s.Scores.N < takes.Enough {
		p.report(lang.Diagnostic{
			Code: "few-takes", Severity: lang.Note, Range: said.File.Range(),
			Message: fmt.Sprintf("%s are few to know the hand of %s by", from, u.name),
			Detail:  fmt.Sprintf("It comes out at %s; 90 %% lie within %s. From %d takes on that is told without this note.", value, spans, takes.Enough),
			Figures: []lang.Figure{figure("takes", float64(s.Scores.N)), figure("wanted_takes", takes.Enough)},
		})
	}
}

func hundredths(v float64) string { return plan.Decimal(v, 2) }

// count writes a number of things.
func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
