package interp_test

import (
	"slices"
	"testing"
)

// Every finding that is flagged has its letter in the list of findings too, a letter
// holds one code alone, and letters ascend with time.
func TestLettersOfFindings(t *testing.T) {
	plans, flags := []string{racksTooShort()}, 0
	for i := range 60 {
		plans = append(plans, generated.Example(i))
	}
	for _, src := range plans {
		res := interpret("plan.pull", src)
		told := map[string]int{}
		for _, d := range res.Findings {
			if d.Cause != "" {
				told[d.Shot+" "+d.Code+" "+d.Cause]++
			}
		}
		for _, s := range res.Plan.Shots {
			first := -1.0
			for _, l := range s.Lettered() {
				at := s.Flags[l.Flags[0]-1].Time
				if at < first {
					t.Errorf("%s at %v s stands after %v s\n%s", l.Letter, at, first, src)
				}
				first = at
				if told[s.ID+" "+l.Code+" "+l.Letter] == 0 {
					t.Errorf("%s (%s) is on no finding\n%s", l.Letter, l.Code, src)
				}
				for _, n := range l.Flags {
					f := s.Flags[n-1]
					if flags++; f.Cause != l.Letter || f.Code != l.Code || !slices.Equal(sorted(f.CureTexts), sorted(l.Cures)) {
						t.Errorf("flag %+v has not the cause %+v", f, l)
					}
					if f.Who != "" && s.Subject(f.Who) == nil {
						t.Errorf("flag %+v is about nobody", f)
					}
				}
			}
		}
	}
	if flags < 100 {
		t.Errorf("only %d flags were seen", flags)
	}
}

func sorted(list []string) []string { return slices.Sorted(slices.Values(list)) }
