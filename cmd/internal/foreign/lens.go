// The statements of a lens.

package foreign

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"slices"
	"strings"

	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/optics"
)

// OpenTrackIO returns the kit of a file of samples. The lens gets the name, or
// where that is empty the one that the file gives it. The error is one of the file
// system, or says that the file has no samples at all, or none that says anything of
// a lens or a camera.
func OpenTrackIO(r io.Reader, file, name string) (*Kit, error) {
	t, err := gather(r, file)
	if err != nil {
		return nil, err
	}
	if t.samples == 0 {
		if faults := t.faults.List(); len(faults) > 0 {
			return &Kit{Findings: faults}, nil
		}
		return nil, fmt.Errorf("%s: has no samples", file)
	}
	if !t.said { // some other JSON
		return nil, fmt.Errorf("%s: says nothing of a lens or a camera", file)
	}
	p := &page{}
	p.note(0, "From %s: OpenTrackIO, %s.", clean(filepath.Base(file)), units.Count(t.samples, "sample"))
	p.note(0, "Each comment names the field of the file. Nothing is guessed: where ___ is, the file")
	p.note(0, "says nothing. Fill it in, and delete the first #.")
	t.writeCamera(p)
	missing := t.writeLens(p, name)
	if len(missing) > 0 {
		t.tell(lang.Note, "foreign-lens", lang.Pos{}, nothingOf(missing),
			"The comments in the kit say how. pullscore lens --sheet prints a paper to measure with.")
	}
	return settled(p, file, t.faults.List()), nil
}

// nothingOf says what a file lacks.
func nothingOf(missing []string) string {
	them := "them"
	if len(missing) == 1 {
		them = "it"
	}
	return fmt.Sprintf("this file says nothing of %s: measure %s", strings.Join(missing, ", "), them)
}

// writeLens writes the section of the lens and returns what the file does not say
// of it.
func (t *track) writeLens(p *page, name string) (missing []string) {
	l := &t.lens
	p.head("lens "+named(cmp.Or(name, t.lensName(l)), "1"), "static.lens")
	if l.Nominal.Ok() {
		p.say(fmt.Sprintf("focal %s mm", units.Decimal(l.Nominal.Value, 3)), "nominalFocalLength")
	} else {
		missing = append(missing, "focal")
		p.lacks("focal ___ mm", "engraved on the lens; pinholeFocalLength is not it")
	}
	if !t.writeStops(p) {
		missing = append(missing, "stops")
	}
	if l := &t.camera.Squeeze; l.Ok() && l.Value() != 1 {
		p.say("squeeze "+units.Decimal(l.Value(), 4), "static.camera.anamorphicSqueeze")
	}
	t.writePupil(p)
	return append(missing, t.writeRing(p)...)
}

// writeStops writes the ranges of stops that were seen; ok is false for none.
func (t *track) writeStops(p *page) (ok bool) {
	for _, s := range []struct {
		seen          span
		letter, field string
	}{{t.fStop, "f/", "lens.fStop"}, {t.tStop, "T", "lens.tStop"}} {
		if s.seen.n == 0 {
			continue
		}
		ok = true
		why := s.field + ", the least and the most seen: the iris may go farther"
		if s.seen.least == s.seen.most {
			why = s.field + ", the only one seen: write what is engraved"
		}
		p.say(fmt.Sprintf("stops %[1]s%[2]s to %[1]s%[3]s", s.letter, significant(s.seen.least, 4), significant(s.seen.most, 4)), why)
	}
	if !ok {
		p.lacks("stops f/___ to f/___", "engraved on the lens; or stops T___ to T___")
	}
	return ok
}

// writePupil writes the pupil ratio. The file says where the entrance pupil is,
// and the ratio follows from that and the focal length.
func (t *track) writePupil(p *page) {
	if len(t.sights) == 0 {
		return
	}
	if !t.lens.Nominal.Ok() {
		p.note(1, "pupil ___  # lens.entrancePupilOffset is in the file, but the ratio needs the focal length")
		return
	}
	focal := t.lens.Nominal.Value / 1000
	var ratios []float64
	for _, s := range t.sights {
		if ratio := optics.PupilRatio(s.offset, s.distance, focal); !math.IsNaN(ratio) {
			ratios = append(ratios, ratio)
		}
	}
	if len(ratios) == 0 {
		p.note(1, "pupil ___  # lens.entrancePupilOffset lies where a thin lens of this focal length has none")
		return
	}
	slices.Sort(ratios)
	why := "lens.entrancePupilOffset"
	if n := len(ratios); n > 1 {
		why += fmt.Sprintf(", the middle of %d from %s to %s", n, significant(ratios[0], 4), significant(ratios[n-1], 4))
	}
	p.say("pupil "+significant(ratios[(len(ratios)-1)/2], 4), why)
}

// writeRing writes the marks of the ring, and what is not known of it.
func (t *track) writeRing(p *page) (missing []string) {
	ring := t.places()
	switch {
	case ring.closest > 0:
		p.say("closest "+metres(ring.closest), ring.field+" is 1 there, which the form calls the closest focus")
	default:
		missing = append(missing, "closest")
		how := "engraved on the lens, or measured from the sensor mark"
		if t.focus.n > 0 {
			how += "; the nearest distance in the file is " + metres(t.focus.least)
		}
		p.lacks("closest ___ cm", how)
	}
	missing = append(missing, "ring")
	p.lacks("ring ___ deg, girth ___ mm", "how far it turns, and the way round it: pullscore help throw")
	if len(ring.marks) == 0 {
		p.lacks("mark ___ m at ___ deg", "pullscore lens --sheet prints a tape and a table to measure with")
		return append(missing, "marks")
	}
	p.note(1, "lens.focusDistance at %s. The form does not say from which plane the distance", ring.field)
	p.note(1, "is: it is taken from the sensor.")
	for _, n := range ring.notes {
		p.note(1, "%s", n)
	}
	if ring.field == rawField && len(ring.marks) == 1 {
		m := ring.marks[0]
		p.lacks(ring.statement(m), "one position does not tell which way the encoder counts: write a second mark")
		return append(missing, "marks")
	}
	for _, m := range ring.marks {
		p.say(ring.statement(m), m.says())
	}
	if ring.inf {
		p.say("mark inf at "+decimalPlaces(0, ring.digits)+" of 1", "the form has 0 at infinity")
	}
	return missing
}

// statement writes a mark.
func (r *barrel) statement(m place) string {
	return fmt.Sprintf("mark %s at %s of %s", metres(m.distance), decimalPlaces(m.at, r.digits), r.of)
}

// metres writes a distance as a plan has it, to a millimetre, or a centimetre from
// 10 m on.
func metres(d float64) string {
	switch {
	case d < 1:
		return units.Style{}.Tape(d)
	case d < 10:
		return units.Decimal(d, 3) + " m"
	}
	return units.Decimal(d, 2) + " m"
}
