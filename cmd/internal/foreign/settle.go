// Statements that the language refuses.

package foreign

import (
	"pullscore/interp"
	"pullscore/lang"
)

// settled returns the kit of a page. A value outside the bounds that the language
// sets, such as a sensor as wide as a house, becomes a comment: the language knows
// its bounds best, so it is asked.
func settled(p *page, file string, findings []lang.Diagnostic) *Kit {
	res := interp.Interpret(file, p.raw(), interp.Options{})
	for _, d := range res.Findings {
		n := d.Range.Start.Line - 1
		if d.Code != "out-of-range" && d.Code != "bad-number" || n < 0 || n >= len(p.lines) || p.lines[n].statement == "" {
			continue
		}
		l := &p.lines[n]
		l.comment = clean(l.statement) + "  # " + l.comment + ": " + d.Message
		l.statement = ""
	}
	return &Kit{Text: lang.Format(p.raw()), Findings: findings}
}
