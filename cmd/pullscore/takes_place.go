// Where a recording without a plan lies: its rate, and the clip of a list that it is of.

package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"pullscore/cmd/internal/files"
	"pullscore/interp"
	"pullscore/interp/edit"
	"pullscore/interp/takes/recorded"
	"pullscore/interp/unplanned"
	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// goTogether says what does not go together.
func (c *takesCmd) goTogether() error {
	switch {
	case c.Recorded == "":
		return errors.New("--captions, --against, --clip, --clips and --rate go with --recorded")
	case c.Plan != "" || c.Shot != "" || c.Append != "" || c.Date != "" || c.log() != "" || c.Clock != "":
		return errors.New("--captions tells of a recording without a plan: leave out --plan, --shot, --append, --date, --clock and the log")
	case c.Captions == "":
		return errors.New("name the subtitles with --captions")
	case c.As != "text" && c.As != "json" && c.As != "csv" && c.As != "edl" && c.As != "otio":
		return errors.New("a recording without a plan is told as text, json, csv, edl or otio")
	case c.Against == "" && c.Clip != "":
		return errors.New("--clip names a clip of a list: name the list with --against")
	}
	return nil
}

// headSize is how much of a recording is looked at for its rate, in bytes.
const headSize = 64 << 10

// open opens the recording.
func (c *takesCmd) open(s *session) (in *bufio.Reader, closeIt func() error, err error) {
	if c.Recorded == files.Stdin {
		return bufio.NewReaderSize(s.in, headSize), func() error { return nil }, nil
	}
	f, err := os.Open(c.Recorded)
	if err != nil {
		return nil, nil, files.Plain(err)
	}
	return bufio.NewReaderSize(f, headSize), f.Close, nil
}

// texts are the files beside a recording; those that are not named are nil.
type texts struct{ captions, list, clips *lines.Text }

// beside reads the files that are named beside the recording.
func (c *takesCmd) beside() (t texts, err error) {
	for _, f := range []struct {
		path string
		to   **lines.Text
	}{{c.Captions, &t.captions}, {c.Against, &t.list}, {c.Clips, &t.clips}} {
		if f.path == "" {
			continue
		}
		src, err := interp.ReadFile(f.path)
		if err != nil {
			return t, files.Plain(err)
		}
		*f.to, _ = lines.Decode(f.path, src)
	}
	return t, nil
}

// unplannedRate returns the rate at which the recording counts, and which file says it;
// "" where --rate does. The recording knows best, since it is its timecode that counts.
func (c *takesCmd) unplannedRate(in *bufio.Reader, t texts) (rate timecode.Rate, from string, err error) {
	if c.Rate != "" {
		if rate, err = timecode.ParseRate(c.Rate); err != nil {
			return rate, "", fmt.Errorf("--rate: %w", err)
		}
		return rate, "", nil
	}
	head, err := in.Peek(headSize)
	if err != nil && !errors.Is(err, io.EOF) {
		return rate, "", files.Plain(err)
	}
	if rate, ok := recorded.RateIn(head, name(c.Recorded)); ok {
		return rate, name(c.Recorded), nil
	}
	for _, text := range []*lines.Text{t.list, t.clips} {
		if text == nil {
			continue
		}
		if rate, ok := edit.RateOf(text); ok {
			return recorded.Counted(rate, head), text.Name, nil
		}
	}
	return rate, "", errors.New("no file says how many frames a second the timecode counts: say --rate 24")
}

// placed says where the recording lies: in the source of a clip, or without one in the
// record. Where no list says when the picture begins, it begins at the full hour before
// the recording, as programmes do (common practice, no source): what is told says so.
func (c *takesCmd) placed(s *session, t texts, rate timecode.Rate, frames []recorded.Sample) (*unplanned.Place, error) {
	at := &unplanned.Place{Rate: rate}
	label := rate.Format(frames[0].Number)
	hour, err := rate.Parse(label[:2] + strings.Map(zeros, label[2:]))
	if at.Start = hour; err != nil || t.list == nil {
		return at, err
	}
	list, found, diags := edit.Find(t.list, rate, c.Clip)
	for _, d := range diags {
		if d.Severity == lang.Error {
			s.printPageErrors(t.list, diags)
			return nil, errFindings
		}
	}
	if list.HasStart {
		at.Start = list.Start
	}
	switch {
	case !list.IsList:
		return nil, fmt.Errorf("%s is no list of a cut: name subtitles with --captions", c.Against)
	case c.Clip == "":
		return at, nil
	case len(found) == 0:
		message := fmt.Sprintf("%s has no clip %q", c.Against, c.Clip)
		if near := list.Near(edit.Bare(c.Clip)); len(near) > 0 {
			message += fmt.Sprintf("; the nearest is %s", strings.Join(near, ", "))
		}
		return nil, errors.New(message)
	}
	log := &edit.Log{}
	if t.clips != nil {
		log, _ = edit.ReadLog(t.clips, rate)
	}
	return at, at.Show(found, log.Rows, frames)
}

// zeros turns digits into 0.
func zeros(r rune) rune {
	if '0' <= r && r <= '9' {
		return '0'
	}
	return r
}
