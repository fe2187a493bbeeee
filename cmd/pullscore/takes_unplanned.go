// pullscore takes --recorded --captions: a recording without a plan.

package main

import (
	"encoding/csv"
	"path/filepath"
	"strconv"
	"strings"

	"pullscore/cmd/internal/export"
	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp/takes"
	"pullscore/interp/takes/recorded"
	"pullscore/interp/unplanned"
)

// An account is what is told of a recording without a plan.
type account struct {
	Recording string           `json:"recording"`
	Frames    int              `json:"frames"`
	Rate      string           `json:"rate"`
	RateFrom  string           `json:"rate_from,omitempty"` // the file that says it; "" where --rate does
	Clip      string           `json:"clip,omitempty"`      // of the list, that was recorded
	Begins    string           `json:"captions_begin"`      // where the subtitles count from
	Moves     []unplanned.Told `json:"moves"`
	Faulty    int              `json:"faulty"`
	Faults    []takes.Place    `json:"faults,omitempty"`
}

// unplanned tells which moves a recording has, and what was said meanwhile.
func (c *takesCmd) unplanned(s *session) error {
	if err := c.goTogether(); err != nil {
		return err
	}
	in, closeIt, err := c.open(s)
	if err != nil {
		return err
	}
	defer closeIt()
	texts, err := c.beside()
	if err != nil {
		return err
	}
	rate, from, err := c.unplannedRate(in, texts)
	if err != nil {
		return err
	}
	curve, err := recorded.ReadSamples(in, name(c.Recorded), recorded.Options{Rate: rate, At: c.At, Unit: c.Unit, Column: c.Column})
	if err != nil {
		return files.Plain(err)
	}
	at, err := c.placed(s, texts, rate, curve.Samples)
	if err != nil {
		return err
	}
	said, diags := unplanned.Sentences(texts.captions)
	faulty := s.printPageErrors(texts.captions, diags)
	a := account{
		Recording: name(c.Recorded), Frames: len(curve.Samples), Rate: rate.String(), RateFrom: from, Begins: rate.Format(at.Start),
		Moves: unplanned.Account(curve.Samples, at, said), Faulty: curve.Faults.N, Faults: curve.Faults.Places(),
	}
	if at.Listed {
		a.Clip = at.Clips[0].Name
	}
	err = a.write(s, c.As, at, curve.Samples)
	if err == nil && (s.printFaults(a.Faults, a.Faulty) || faulty) {
		err = errFindings
	}
	return err
}

// write writes what is told in the form that was asked for.
func (a *account) write(s *session, form string, at *unplanned.Place, frames []recorded.Sample) error {
	laid := at.Plan(strings.TrimSuffix(filepath.Base(a.Recording), filepath.Ext(a.Recording)), frames)
	switch form {
	case "json":
		return findings.Encode(s.out, a)
	case "csv":
		return a.writeCSV(s)
	case "edl":
		return export.UnplannedEDL(s.out, laid, a.Moves)
	case "otio":
		return export.UnplannedOTIO(s.out, laid, a.Moves)
	}
	return lists.WriteUnplanned(s.screen, lists.Unplanned{
		Recording: a.Recording, Frames: a.Frames, Rate: a.Rate, RateFrom: a.RateFrom, Clip: a.Clip, Begins: a.Begins,
	}, a.Moves)
}

// writeCSV writes a row a move.
func (a *account) writeCSV(s *session) error {
	w := csv.NewWriter(s.out)
	w.Write([]string{"move", "record_start", "record_land", "source_start", "source_land", "from_m", "to_m", "seconds", "rests", "word_at_start", "word_at_landing", "within_a_sentence", "sentence"})
	figure := func(v float64) string { return strconv.FormatFloat(v, 'f', 3, 64) }
	yes := map[bool]string{true: "yes", false: "no"}
	for i := range a.Moves {
		m := &a.Moves[i]
		w.Write([]string{strconv.Itoa(m.Number), m.RecordStart, m.RecordLand, m.SourceStart, m.SourceLand,
			figure(float64(m.From)), figure(float64(m.To)), figure(float64(m.Seconds)), yes[m.Rests], m.WordStart, m.WordLand, yes[m.Within], m.Sentence})
	}
	w.Flush()
	return w.Error()
}
