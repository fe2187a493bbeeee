package diff

import (
	"bytes"
	"strings"
	"testing"

	"pullscore/cmd/internal/console"
)

// named is the state of a text in a file of that name; of no plan without one.
func named(t *testing.T, name, text string) State {
	t.Helper()
	s := State{Name: name}
	if text != "" {
		s = state(t, text)
		s.Name, s.Text = name, []byte(text)
	}
	return s
}

func TestJoinRenamed(t *testing.T) {
	later := edited([]string{"at 1 s", "at 1.5 s"})
	noted := edited([]string{"subject MARRIT at 1.6 m", "subject MARRIT at 1.6 m # by the rail"})
	kit, otherKit := scene[:strings.Index(scene, "subject")], "camera B\n  sensor 24.89 x 18.66 mm\n"
	for _, c := range []struct {
		name                 string
		gone, came           []string
		want, summary, first string
	}{
		{"the same text", []string{scene}, []string{scene}, "renamed", "1 plan renamed, and no other difference for the crew", "renamed gone-0.pull to new-0.pull"},
		{"another note", []string{scene}, []string{noted}, "renamed", "1 plan renamed, and no other difference for the crew", "renamed gone-0.pull to new-0.pull"},
		{"another time", []string{scene}, []string{later}, "changed", "shots: 1 changed, 1 same", "renamed gone-0.pull to new-0.pull"},
		{"another title", []string{scene}, []string{strings.Replace(later, "plan \"", "plan \"On ", 1)}, "new gone", "shots: 2 new, 2 gone", "new-0.pull: new"},
		{"few of its shots", []string{scene}, []string{strings.Replace(later, "shot 2", "shot 9", 1)}, "new gone", "shots: 2 new, 2 gone", "new-0.pull: new"},
		{"a kit", []string{kit}, []string{kit}, "renamed", "1 plan renamed, and no other difference for the crew", "renamed gone-0.pull to new-0.pull"},
		{"another kit", []string{kit}, []string{otherKit}, "new gone", "2 plans changed", "new-0.pull: new"},
		{"two of one text", []string{scene, scene}, []string{scene}, "renamed gone", "shots: 2 gone, 2 same; 1 plan renamed", "renamed gone-0.pull to new-0.pull"},
		{"the text counts for more", []string{noted, scene}, []string{scene, later}, "renamed changed", "", "renamed gone-1.pull to new-0.pull"},
	} {
		var plans []Plan
		for i, text := range c.came {
			plans = append(plans, Compare(named(t, "", ""), named(t, "new-"+string(rune('0'+i))+".pull", text)))
		}
		for i, text := range c.gone {
			plans = append(plans, Compare(named(t, "gone-"+string(rune('0'+i))+".pull", text), named(t, "", "")))
		}
		joined := JoinRenamed(plans)
		var changes []string
		for _, p := range joined {
			changes = append(changes, string(p.Change))
		}
		if got := strings.Join(changes, " "); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
			continue
		}
		if got := Summary(joined); c.summary != "" && got != c.summary {
			t.Errorf("%s: %q, want %q", c.name, got, c.summary)
		}
		var text bytes.Buffer
		if err := WriteText(console.Screen{W: &text, Width: 80}, joined, false); err != nil || !strings.Contains(text.String(), "\n"+c.first+"\n") {
			t.Errorf("%s: %v\n%s", c.name, err, &text)
		}
	}
}
