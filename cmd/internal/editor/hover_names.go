// What a name or a number at a place stands for.

package editor

import (
	"fmt"
	"math"
	"path/filepath"
	"strconv"
	"strings"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
)

// timeSays returns a time with its frame.
func timeSays(s *plan.Shot, t float64) string {
	return fmt.Sprintf("%s, frame %d", figures.Time(t), s.Speed().Frames(t))
}

// spoken says when a word falls that something hangs on.
func (t *teller) spoken(m interp.Mention) []string {
	d, err := t.s.at(m.Of.File)
	if err != nil {
		return nil
	}
	said, ok := statementAt(d.tree(), m.Of.Start.Offset).(*lang.Speech)
	if !ok {
		return t.declared(m)
	}
	for _, shot := range t.shots {
		line := lineOfSpeech(shot, said, d)
		if line == nil {
			continue
		}
		text := string(d.data[m.Of.Start.Offset:m.Of.End.Offset])
		lines := []string{fmt.Sprintf("%s, in what %s says from %s to %s", quoted(text), line.Who, figures.Time(float64(line.Start)), figures.Time(float64(line.End)))}
		before := len(strings.Fields(string(d.data[said.Words.Range().Start.Offset:m.Of.Start.Offset])))
		if before < len(line.Words) {
			at := timeSays(shot, line.Words[before].Start)
			if line.Estimated {
				at += " (estimated)"
			}
			lines = append(lines, "begins at "+at)
		}
		return lines
	}
	return t.declared(m)
}

// quoted returns a text in the quotes of print, once.
func quoted(text string) string { return "“" + strings.Trim(text, `"“”`) + "”" }

// declared returns the statement that declares a name, or its section, and where that is.
func (t *teller) declared(m interp.Mention) []string {
	d, err := t.s.at(m.Of.File)
	if err != nil {
		return nil
	}
	one := statementAt(d.tree(), m.Of.Start.Offset)
	if one == nil {
		return nil
	}
	at := spanOf(one.Range())
	for _, section := range d.tree().Sections {
		switch section.Head.(type) {
		case *lang.Camera, *lang.Lens, *lang.Puller, *lang.Move:
			if section.Head == one {
				at = spanOf(rangeOf(section))
			}
		}
	}
	lines := strings.Split(strings.TrimRight(string(d.data[at.start:at.end]), "\r\n"), "\n")
	const most = mostLines - 2
	if len(lines) > most {
		lines = append(lines[:most:most], "  …")
	}
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], "\r")
	}
	if d.real != t.doc.real {
		lines = append(lines, fmt.Sprintf("in %s, line %d", filepath.Base(m.Of.File), one.Range().Start.Line))
	}
	return lines
}

// number says a length in the other system of units too, and a time in frames.
func (t *teller) number() []string {
	value, unit := t.numberAndUnit()
	if math.IsNaN(value) {
		return nil
	}
	metres := map[string]float64{"m": 1, "cm": 0.01, "mm": 0.001, "ft": 0.3048, "in": 0.0254}
	seconds := map[string]float64{"s": 1, "ms": 0.001}
	switch {
	case metres[unit] > 0 && value*metres[unit] >= 0.01:
		first, second := units.ForTable(unit == "ft" || unit == "in").Both(value * metres[unit])
		return []string{first + " = " + second}
	case seconds[unit] > 0 && len(t.shots) > 0:
		n := t.shots[0].Speed().Frames(value * seconds[unit])
		return []string{figures.Time(value*seconds[unit]) + " = " + figures.Frames(n)}
	case unit == "fr" && len(t.shots) > 0:
		num, den := t.shots[0].Rate.Exact()
		return []string{figures.Frames(int64(value)) + " = " + figures.Time(value*float64(den)/float64(num))}
	}
	return nil
}

// numberAndUnit returns the number at the place and the unit behind it; NaN for what is no
// plain number.
func (t *teller) numberAndUnit() (float64, string) {
	rest := t.doc.data[t.token.End:]
	next := lang.Tokens(rest[:min(len(rest), 16)])
	value, err := strconv.ParseFloat(t.word(), 64)
	if err != nil || len(next) == 0 || strings.ContainsAny(string(rest[:next[0].Start]), "\r\n") {
		return math.NaN(), ""
	}
	return value, string(rest[next[0].Start:next[0].End])
}
