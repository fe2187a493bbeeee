package moments

import (
	"testing"

	"pullscore/interp/plan"
	"pullscore/optics/ring"
)

func TestNotJudged(t *testing.T) {
	bare := func(id string) *plan.Shot { return &plan.Shot{ID: id, Pulls: []*plan.Pull{{Chance: plan.None()}}} }
	for _, c := range []struct {
		shots []*plan.Shot
		want  string
	}{
		{nil, ""},
		{[]*plan.Shot{{ID: "1"}}, ""}, // nothing is pulled, so there is no landing to judge
		{[]*plan.Shot{bare("1")}, "not judged: how the hand lands in shot 1 (no ring, or one by wire)"},
		{[]*plan.Shot{bare("1"), {ID: "2"}, bare("3")}, "not judged: how the hand lands in shots 1 and 3 (no ring, or one by wire)"},
		{[]*plan.Shot{bare("1"), bare("2"), bare("3"), bare("4")}, "not judged: how the hand lands in 4 shots (no ring, or one by wire)"},
		{[]*plan.Shot{{ScreenAssumed: true}}, "not judged: the screen it is watched on (assumed)"},
		{[]*plan.Shot{{Lines: []plan.Line{{Estimated: true}, {}}}}, "not judged: when one line is said (estimated)"},
		{[]*plan.Shot{
			{Lines: []plan.Line{{Estimated: true}, {}}},
			{Lines: []plan.Line{{Estimated: true}}, Subjects: []*plan.Subject{{}, {SwayAssumed: true}}},
		}, "not judged: when 2 lines are said (estimated); how people sway (assumed)"},
		{[]*plan.Shot{{Pulls: []*plan.Pull{{Chance: 0.9}}, Optics: plan.Optics{Ring: &ring.Law{}}}}, "not judged: whose hand it is (no log of takes)"},
		{[]*plan.Shot{{Log: "takes.csv", Pulls: []*plan.Pull{{Chance: 0.9}}, Optics: plan.Optics{Ring: &ring.Law{}}}}, ""},
	} {
		if got := NotJudged(c.shots...); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
