// A puller's log of takes: the hand that it shows stands in for the published
// one. What the puller's section says itself wins over the log.

package film

import (
	"bytes"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"sync"

	"pullscore/interp/kit"
	"pullscore/interp/load"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/interp/takes/fit"
	"pullscore/interp/units"
	"pullscore/lang"
)

// faultsTold is how many faults of a log a plan is told of.
const faultsTold = 5

// learn fits the puller's hand to its log, unless no log is wanted; again is true
// where that has to wait for the plan.
func (r *reader) learn(u *kit.Puller, said *lang.Takes, sec *lang.Section) (again bool) {
	if !load.NamesFile(said.File, r.Reporter) || r.loader.Opt.WithoutLogs {
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
	read := r.readLog(u, path, data)
	if r.before == nil && read.waits() {
		return true // its pulls, their angles and rims are known once the plan is built
	}
	f := read.fit()
	r.tellLog(u, said, read.sample, &f, &read.faults)
	if f.Takes > 0 {
		r.tellSlips(u, said, &f)
		r.learnFrom(u, said, sec, &f)
	}
	return false
}

// A readLog is a log with the hand that it shows.
type readLog struct {
	sample *takes.Sample
	faults takes.Faults
	fit    func() fit.Fit // once it is asked for
}

// waits reports whether the log names pulls, which the plan has to place.
func (l *readLog) waits() bool { return l.faults.Unplaced > 0 || l.sample.NamesPulls() }

// readLog reads a log. A cache can keep one that names no pulls: where it does, every
// letter of the plan may mean other rows.
func (r *reader) readLog(u *kit.Puller, path string, data []byte) *readLog {
	parse := func() *readLog {
		l := &readLog{}
		l.sample, l.faults = r.sample(u, path, data)
		l.fit = sync.OnceValue(l.sample.Fit)
		return l
	}
	if r.before != nil {
		return parse()
	}
	return load.Cached(r.loader.Opt.Cache, load.Logs, path, data, fmt.Sprintf("%s %v", u.Name, u.Hand.Grip), parse)
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
func (r *reader) tellLog(u *kit.Puller, said *lang.Takes, s *takes.Sample, f *fit.Fit, faults *takes.Faults) {
	name := said.File.Value
	if faults.N > 0 {
		d := lang.Diagnostic{
			Code: "broken-log", Severity: lang.Warning, Range: said.File.Range(),
			Message: fmt.Sprintf("%s in %q cannot be used", units.Count(faults.N, "row"), name),
			Detail:  fmt.Sprintf("All others count. The first: %s.", faults.List[0].Error()),
		}
		if s.Scores.N == 0 && s.Page.Scores.N == 0 {
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
	if f.Takes == 0 {
		r.Report(lang.Diagnostic{
			Code: "no-takes", Severity: lang.Warning, Range: said.File.Range(),
			Message: fmt.Sprintf("%q has no takes of %s", name, u.Name), Detail: leftOut(s, faults),
		})
	}
}

// leftOut says which takes of a log are not in the fit.
func leftOut(s *takes.Sample, faults *takes.Faults) string {
	text := fmt.Sprintf("Left out: %s of other pullers, %d that name pulls of other plans", units.Count(s.Others, "take"), faults.Unplaced)
	for _, part := range []struct {
		n    int
		text string
	}{
		{s.Page.Scores.N, "made on the page"},
		{s.Unmeasured, "without a landing"},
		{s.OnTheStop, "onto a mark where the end of the ring is sharp"},
		{s.TooFast, "without time to move"},
	} {
		if part.n > 0 {
			text += fmt.Sprintf(", %d %s", part.n, part.text)
		}
	}
	return text + "."
}

// tellSlips names the takes that lie far outside the others.
func (r *reader) tellSlips(u *kit.Puller, said *lang.Takes, f *fit.Fit) {
	if f.Slipped == 0 {
		return
	}
	verb := "is a slip, and is"
	if f.Slipped > 1 {
		verb = "are slips, and are"
	}
	d := lang.Diagnostic{
		Code: "log-slips", Severity: lang.Note, Range: said.File.Range(),
		Message: fmt.Sprintf("%d of %s in %s %s not in the spread", f.Slipped, units.Count(f.Takes, "take"), logName(said), verb),
		Detail: fmt.Sprintf("The farthest: %s. Every chance of %s is lessened by %s.",
			slipText(&f.Slips[0]), u.Name, units.Style{}.Share(f.SlipShare, 1)),
		Figures: []lang.Figure{{Name: "slips", Value: float64(f.Slipped)}, {Name: "takes", Value: float64(f.Takes)}, {Name: "slip_share", Value: f.SlipShare}},
	}
	for i := range f.Slips[:min(len(f.Slips), faultsTold)] {
		at := lang.Pos{Line: f.Slips[i].Line, Column: 1}
		d.Related = append(d.Related, lang.Related{Message: slipText(&f.Slips[i]), Range: lang.Range{File: u.Log, Start: at, End: at}})
	}
	r.Report(d)
}

// slipText says which take a slip was, and how far out.
func slipText(s *fit.Slip) string {
	text := fmt.Sprintf("row %d", s.Line)
	if s.Date != "" {
		text += " of " + s.Date
	}
	if s.Shot != "" && s.Pull > 0 {
		text += fmt.Sprintf(", shot %s pull %d", s.Shot, s.Pull)
	}
	side := "past the mark"
	if s.Error < 0 {
		side = "short of the mark"
	}
	return fmt.Sprintf("%s, %s %s, %s spreads out", text, units.Style{}.AngleTo(math.Abs(float64(s.Error)), 1), side, units.Decimal(float64(s.Spreads), 1))
}

// logName is the name of the file that a puller's section says.
func logName(said *lang.Takes) string { return filepath.Base(filepath.FromSlash(said.File.Value)) }

// learnFrom gives the puller what the log shows, but for what its section says
// itself, and notes where the numbers come from.
func (r *reader) learnFrom(u *kit.Puller, said *lang.Takes, sec *lang.Section, f *fit.Fit) {
	fitted := f.Hand(u.Hand)
	u.Hand.Slips = fitted.Slips
	value, spans := "", ""
	rimOf := func(mm float64) float64 { return min(max(mm/1000, 1e-5), 0.02) }
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
		u.Hand.RimFrom, u.Hand.RimTo = rimOf(f.Rim.Lo*mm), rimOf(f.Rim.Hi*mm)
		learn(&u.Hand.RimSpread, fitted.RimSpread, 1e-5, 0.02,
			units.Decimal(f.Rim.Value*mm, 2)+" mm at the rim", units.Decimal(f.Rim.Lo*mm, 2)+" to "+units.Decimal(f.Rim.Hi*mm, 2))
	}
	if !names.Has[*lang.Bias](sec) {
		learn(&u.Hand.Bias, fitted.Bias, -30, 30, "bias "+units.Style{}.AngleTo(f.Bias.Value, 2), units.Decimal(f.Bias.Lo, 2)+" to "+units.Decimal(f.Bias.Hi, 2))
	}
	if value == "" {
		return // the section says all that a log could
	}
	from := fmt.Sprintf("%s of %s", units.Count(f.Takes, "take"), logName(said))
	u.Defaults = append(u.Defaults, kit.Missing{Name: "puller " + u.Name, Value: value, Why: fmt.Sprintf("fitted to %s; 90 %% lie within %s", from, spans)})
	if f.Takes < takes.Enough {
		r.Report(lang.Diagnostic{
			Code: "few-takes", Severity: lang.Note, Range: said.File.Range(),
			Message: fmt.Sprintf("%s are too few to know the hand of %s by", from, u.Name),
			Detail:  fmt.Sprintf("The fit gives %s; its 90 %% interval is %s. From %d takes on this note goes away.", value, spans, takes.Enough),
			Figures: []lang.Figure{{Name: "takes", Value: float64(f.Takes)}, {Name: "wanted_takes", Value: takes.Enough}},
		})
	}
}
