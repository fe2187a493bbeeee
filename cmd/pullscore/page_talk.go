// pullscore page interview.srt: a plan of what was said.

package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"pullscore/cmd/internal/script"
	"pullscore/interp/unplanned"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
)

// somebody stands for a speaker whom subtitles do not name.
const somebody = "SPEAKER"

// isTalk reports whether a page is subtitles.
func isTalk(path string) bool {
	switch strings.ToLower(filepath.Ext(path)) {
	case ".srt", ".vtt":
		return true
	}
	return false
}

// talk writes a plan of what subtitles say: a shot with a line for each sentence, and
// the pauses between them.
func (c *pageCmd) talk(s *session, src []byte) error {
	if c.Staged {
		return fmt.Errorf("%s: subtitles tell of no floor: leave out --staged", c.File)
	}
	if c.Scene != "" || c.Against != "" || c.Revised != (revised{}) || c.As != "plan" {
		return fmt.Errorf("%s: subtitles have no scenes and no revisions: leave out --scene, --against, --revised and --as", c.File)
	}
	text, diags := lines.Decode(c.File, src)
	faulty := s.printPageErrors(text, diags)
	said, diags := unplanned.Sentences(text)
	faulty = s.printPageErrors(text, diags) || faulty
	if len(said) == 0 {
		return fmt.Errorf("%s: nobody speaks there", c.File)
	}
	name := strings.TrimSuffix(filepath.Base(c.File), filepath.Ext(c.File))
	page := script.Page{Title: name, Kit: c.kit(), Talk: true, Begins: minuteOf(said[0].Start)}
	page.File, page.Asleep = c.named()
	var cast script.Cast
	scene := fountain.Scene{Position: 1}
	for i, sentence := range said {
		who := strings.ToUpper(sentence.Who)
		if who == "" {
			who = somebody
		}
		beat := fountain.Beat{Who: who, Line: i + 1, Parts: []fountain.Part{{Kind: fountain.Dialogue, Text: sentence.Text}}}
		if note := doubt(said, i); note != "" {
			beat.Parts = append(beat.Parts, fountain.Part{Kind: fountain.Parenthetical, Text: note})
		}
		cast.Add(&beat)
		scene.Beats = append(scene.Beats, beat)
		if i+1 < len(said) {
			page.Pauses = append(page.Pauses, said[i+1].Start-sentence.End)
		}
	}
	plan := script.Plan(page, []fountain.Scene{scene}, &cast)
	err := c.write(s, func(w io.Writer) error {
		_, err := w.Write(plan)
		return err
	})
	if err == nil && faulty {
		err = errFindings
	}
	return err
}

// minuteOf returns the timecode of the full minute before a time in seconds. The shot of
// a talk begins there, so that its times are those of the subtitles, or a few minutes off
// where the talk begins late.
func minuteOf(seconds float64) string {
	minutes := int(seconds / 60)
	return fmt.Sprintf("%02d:%02d:00:00", minutes/60, minutes%60)
}

// doubt returns what is not sure of the speaker of a sentence, where their turn begins.
func doubt(said []unplanned.Sentence, i int) string {
	switch now := said[i]; {
	case !now.Concluded, i > 0 && said[i-1].Concluded && said[i-1].Who == now.Who && now.Who != "":
		return ""
	case now.Who == "":
		return "somebody else: the subtitles have only a dash"
	}
	return "the subtitles have only a dash: check who speaks"
}
