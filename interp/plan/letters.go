// Letters: findings of one cause share a letter, in the flags of the score and beside
// its sentences.

package plan

import (
	"cmp"
	"slices"
	"strings"
)

// A Lettered is the findings of a shot that have one letter: those of one code and
// severity, for which the same cures are offered.
type Lettered struct {
	Letter   string // a to z, then aa
	Code     string
	Severity string   // note, warning or error
	Cures    []string // what to write, the best first; none may be known
	Flags    []int    // the numbers of its flags, from 1, in the order of time
}

// Letter gives every flag of the shot the letter of its cause.
func (s *Shot) Letter() { Letter(s.Flags) }

// Letter gives flags the letters of their causes. The letters go by the first time of a
// cause, then by the row of that flag, from the top of the score down. The numbers of the
// flags count from 1.
func Letter(flags []Flag) {
	for _, l := range lettered(flags) {
		for _, n := range l.Flags {
			flags[n-1].Cause = l.Letter
		}
	}
}

// Lettered returns the findings of the shot by their letters, in the order of these.
func (s *Shot) Lettered() []Lettered { return lettered(s.Flags) }

func lettered(flags []Flag) []Lettered {
	order := make([]*Flag, len(flags))
	for i := range flags {
		order[i] = &flags[i]
	}
	slices.SortStableFunc(order, func(a, b *Flag) int {
		return cmp.Or(cmp.Compare(a.Time, b.Time), cmp.Compare(rowRank(a.Row), rowRank(b.Row)))
	})
	var list []Lettered
	at := map[string]int{}
	for _, f := range order {
		cause := f.causeKey()
		i, ok := at[cause]
		if !ok {
			i = len(list)
			at[cause] = i
			list = append(list, Lettered{Letter: LetterOf(i), Code: f.Code, Severity: f.Severity, Cures: f.CureTexts})
		}
		list[i].Flags = append(list[i].Flags, f.Number)
	}
	return list
}

// causeKey is equal for findings of one cause, whatever pull and time they are about.
func (f *Flag) causeKey() string {
	cures := slices.Compact(slices.Sorted(slices.Values(f.CureTexts)))
	return f.Code + "\x00" + f.Severity + "\x00" + strings.Join(cures, "\x00")
}

// rowRank orders the rows of the score from the top down. What concerns the whole shot
// stands over them.
func rowRank(row string) int {
	return slices.Index([]string{"", "lines", "camera", "distance", "sharp", "hand"}, row)
}

// LetterOf returns the letter of the cause with that index from 0: a to z, aa, ab.
func LetterOf(i int) string {
	letter := ""
	for i++; i > 0; i /= 26 {
		i--
		letter = string(rune('a'+i%26)) + letter
	}
	return letter
}
