// pullscore takes --recorded --captions: a recording without a plan.

package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"strconv"
	"strings"

	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/edit"
	"pullscore/interp/takes"
	"pullscore/interp/takes/recorded"
	"pullscore/interp/unplanned"
	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// An account is what is told of a recording without a plan.
type account struct {
	Recording string           `json:"recording"`
	Frames    int              `json:"frames"`
	Begins    string           `json:"captions_begin"` // where the subtitles count from
	Moves     []unplanned.Told `json:"moves"`
	Faulty    int              `json:"faulty"`
	Faults    []takes.Place    `json:"faults,omitempty"`
}

// unplanned tells which moves a recording has, and what was said meanwhile.
func (c *takesCmd) unplanned(s *session) error {
	rate, err := c.unplannedRate()
	if err != nil {
		return err
	}
	r, err := c.open(s)
	if err != nil {
		return err
	}
	defer r.Close()
	curve, err := recorded.ReadSamples(r, name(c.Recorded), recorded.Options{Rate: rate, At: c.At, Unit: c.Unit, Column: c.Column})
	if err != nil {
		return files.Plain(err)
	}
	at, err := c.placed(s, rate, curve.Samples)
	if err != nil {
		return err
	}
	text, err := c.read8(c.Captions)
	if err != nil {
		return err
	}
	said, diags := unplanned.Sentences(text)
	faulty := s.printPageErrors(text, diags)
	a := account{
		Recording: name(c.Recorded), Frames: len(curve.Samples), Begins: rate.Format(at.Start),
		Moves: unplanned.Account(curve.Samples, at, said), Faulty: curve.Faults.N, Faults: curve.Faults.Places(),
	}
	switch c.As {
	case "json":
		err = findings.Encode(s.out, a)
	case "csv":
		err = a.writeCSV(s)
	default:
		err = lists.WriteUnplanned(s.screen, a.Recording, a.Frames, a.Begins, a.Moves)
	}
	if err == nil && (s.printFaults(a.Faults, a.Faulty) || faulty) {
		err = errFindings
	}
	return err
}

// unplannedRate returns the rate, or says what does not go together.
func (c *takesCmd) unplannedRate() (rate timecode.Rate, err error) {
	switch {
	case c.Recorded == "":
		return rate, errors.New("--captions, --against, --clip and --rate go with --recorded")
	case c.Plan != "" || c.Shot != "" || c.Append != "" || c.Date != "" || c.log() != "" || c.Clock != "":
		return rate, errors.New("--captions tells of a recording without a plan: leave out --plan, --shot, --append, --date, --clock and the log")
	case c.Captions == "":
		return rate, errors.New("name the subtitles with --captions")
	case c.As != "text" && c.As != "json" && c.As != "csv":
		return rate, errors.New("a recording without a plan is told as text, json or csv")
	case c.Rate == "":
		return rate, errors.New("nothing says how many frames a second the timecode counts: say --rate 24")
	case (c.Against == "") != (c.Clip == ""):
		return rate, errors.New("--against and --clip go together: a list, and the name of the clip that was recorded")
	}
	if rate, err = timecode.ParseRate(c.Rate); err != nil {
		return rate, fmt.Errorf("--rate: %w", err)
	}
	return rate, nil
}

// read8 reads a file as text.
func (c *takesCmd) read8(path string) (*lines.Text, error) {
	src, err := interp.ReadFile(path)
	if err != nil {
		return nil, files.Plain(err)
	}
	text, _ := lines.Decode(path, src)
	return text, nil
}

// placed says where the recording lies. Without a list it is in record time, and the
// picture begins at the full hour before it, as programmes do (common practice, no
// source): what is told says so.
func (c *takesCmd) placed(s *session, rate timecode.Rate, frames []recorded.Sample) (*unplanned.Place, error) {
	at := &unplanned.Place{Rate: rate}
	if c.Against == "" {
		label := rate.Format(frames[0].Number)
		hour, err := rate.Parse(label[:2] + strings.Map(zeros, label[2:]))
		at.Start = hour
		return at, err
	}
	text, err := c.read8(c.Against)
	if err != nil {
		return nil, err
	}
	list, diags := edit.Read(text, rate, edit.Wanted{Shots: []string{c.Clip}})
	for _, d := range diags {
		if d.Severity == lang.Error {
			s.printPageErrors(text, diags)
			return nil, errFindings
		}
	}
	at.Listed = true
	for _, piece := range list.Pieces(c.Clip) {
		at.Clips = append(at.Clips, piece.Clip)
	}
	if len(at.Clips) == 0 {
		return nil, fmt.Errorf("%s has no clip %q", c.Against, c.Clip)
	}
	at.Start = list.Start
	return at, nil
}

// zeros turns digits into 0.
func zeros(r rune) rune {
	if '0' <= r && r <= '9' {
		return '0'
	}
	return r
}

// open opens the recording.
func (c *takesCmd) open(s *session) (*os.File, error) {
	if c.Recorded == files.Stdin {
		return os.Stdin, nil
	}
	f, err := os.Open(c.Recorded)
	return f, files.Plain(err)
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
