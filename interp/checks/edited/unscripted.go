// inside-a-sentence: a rack that begins while somebody says a sentence that nobody wrote.
//
// What is hard. In a scene a rack may well lie inside a line: the line was written, and
// the rack has its word. In an interview nobody knows how a sentence goes on, so the
// focus waits for its end. Whether a plan is of the one kind or the other cannot be seen
// in it: both have lines, and subtitles that they are found in.
//
// What is done. The plan says it, where it names the subtitles. Sentences are told by
// the signs in the lines, so that a line may hold several. A rack may begin with a
// sentence, or in its last moment, when it can be heard to end.
//
// What was rejected. To take a plan without a script page for an interview: most scenes
// are planned without one.

package edited

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"pullscore/interp/checks/check"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/interp/speech"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var InsideASentence = check.Check{Codes: []rule.Code{rule.InsideASentence}, Run: insideASentence}

const (
	// late is how much of a sentence is still to come at least, in seconds, if a rack
	// that begins is inside it.
	late = 0.3
	// breath is how long nobody must speak for a place to rack in, seconds. Our own choice.
	breath = 0.3
)

// A sentence is what somebody says up to a sign that ends it, in seconds of the shot.
type sentence struct {
	who        string
	line       *lang.Speech
	last       bool // of its line
	start, end float64
}

func insideASentence(b *check.Shot) (found []check.Finding) {
	said := sentences(b)
	if len(said) == 0 {
		return nil
	}
	b.Racks(func(p *shot.Pull) {
		if p.Rack.Because != "" || b.StaysOn(p) || p.Plan.IsRemoved() {
			return
		}
		i := slices.IndexFunc(said, func(s sentence) bool {
			return p.Rack.StartS > s.start+1e-9 && p.Rack.StartS < s.end-late
		})
		if i < 0 {
			return
		}
		s := said[i]
		found = append(found, b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "inside-a-sentence", Severity: lang.Warning,
			Message: fmt.Sprintf("the rack begins inside a sentence of %s, %s before its end", s.who, b.Units.Time(s.end-p.Rack.StartS)),
			Detail:  whereInstead(b, said, p.Rack.StartS),
			Figures: []lang.Figure{check.Figure("left_s", s.end-p.Rack.StartS)},
			Related: []lang.Related{{Message: "the line", Range: s.line.Range()}},
		}, Tries: func() (tries []change.Change) {
			if s.last {
				tries = append(tries, check.Edited(change.Edit{Kind: change.OnEndOf, Item: p.Rack.Item + 1, Who: s.who, Seconds: s.end}))
			}
			return append(tries, check.Edited(change.Edit{Kind: change.Because, Item: p.Rack.Item + 1}))
		}}))
	})
	return found
}

// sentences returns what is said in a shot that nobody wrote, in the order of time.
func sentences(b *check.Shot) (list []sentence) {
	for _, l := range b.Clock.InOrder {
		if !b.Unscripted(l) {
			continue
		}
		open := false
		words := l.Drawn()
		for i, w := range words {
			word, signs := parted(w.Text)
			if n := len(list); open || i > 0 && speech.GoesOn(word) {
				list[n-1].end = w.End
			} else {
				list = append(list, sentence{who: l.Who, line: l.Stmt, start: w.Start, end: w.End})
			}
			open = !speech.Ends(word, signs)
		}
		if len(words) > 0 {
			list[len(list)-1].last = true
		}
	}
	slices.SortStableFunc(list, func(a, b sentence) int { return cmp.Compare(a.start, b.start) })
	return list
}

// parted parts a word from the signs behind it.
func parted(text string) (word, signs string) {
	end := strings.LastIndexFunc(text, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) })
	if end < 0 {
		return text, ""
	}
	_, n := utf8.DecodeRuneInString(text[end:])
	return text[:end+n], text[end+n:]
}

// whereInstead says where the rack may go: the silence between sentences that is nearest
// to a time in seconds of the shot.
func whereInstead(b *check.Shot, said []sentence, at float64) string {
	silent, from, long := math.Inf(1), 0.0, 0.0
	over := said[0].end // of all sentences so far
	for _, s := range said[1:] {
		if away := min(math.Abs(over-at), math.Abs(s.start-at)); s.start-over >= breath-1e-9 && away < silent {
			silent, from, long = away, over, s.start-over
		}
		over = max(over, s.end)
	}
	if math.IsInf(silent, 1) {
		return "Nobody wrote this talk, so wait for the end of the sentence, or say why."
	}
	return fmt.Sprintf("Nobody wrote this talk, so wait for a silence: the nearest is %s long, from %s on. Or say why.", b.Units.Time(long), b.Units.Time(from))
}
