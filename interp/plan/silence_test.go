package plan

import (
	"testing"

	"pullscore/optics/ring"
)

func TestNotJudged(t *testing.T) {
	bare := func(id string) *Shot { return &Shot{ID: id, Pulls: []*Pull{{Chance: None()}}} }
	for _, c := range []struct {
		shots []*Shot
		want  string
	}{
		{nil, ""},
		{[]*Shot{{ID: "1"}}, ""}, // nothing is pulled, so there is no landing to judge
		{[]*Shot{bare("1")}, "not judged: how the hand lands in shot 1 (no ring, or one by wire)"},
		{[]*Shot{bare("1"), {ID: "2"}, bare("3")}, "not judged: how the hand lands in shots 1 and 3 (no ring, or one by wire)"},
		{[]*Shot{bare("1"), bare("2"), bare("3"), bare("4")}, "not judged: how the hand lands in 4 shots (no ring, or one by wire)"},
		{[]*Shot{{ScreenAssumed: true}}, "not judged: the screen it is watched on (assumed)"},
		{[]*Shot{{Lines: []Line{{Estimated: true}, {}}}}, "not judged: when one line is said (estimated)"},
		{[]*Shot{
			{Lines: []Line{{Estimated: true}, {}}},
			{Lines: []Line{{Estimated: true}}, Subjects: []*Subject{{}, {SwayAssumed: true}}},
		}, "not judged: when 2 lines are said (estimated); how people sway (assumed)"},
		{[]*Shot{{Pulls: []*Pull{{Chance: 0.9}}, Optics: Optics{Ring: &ring.Law{}}}}, "not judged: whose hand it is (no log of takes)"},
		{[]*Shot{{Log: "takes.csv", Pulls: []*Pull{{Chance: 0.9}}, Optics: Optics{Ring: &ring.Law{}}}}, ""},
	} {
		if got := NotJudged(c.shots...); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
