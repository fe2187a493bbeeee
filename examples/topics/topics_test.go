package topics_test

import (
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pullscore/examples/topics"
)

// Every topic begins with a title, and what it links to exists.
func TestTopics(t *testing.T) {
	names := topics.Names()
	if len(names) < 10 {
		t.Fatalf("only %d topics", len(names))
	}
	link := regexp.MustCompile(`\]\(([^)]+)\)`)
	for _, name := range names {
		text, ok := topics.Markdown(name)
		if !ok || !strings.HasPrefix(text, "# ") {
			t.Errorf("%s has no title", name)
		}
		for _, m := range link.FindAllStringSubmatch(text, -1) {
			if strings.Contains(m[1], "://") {
				continue
			}
			if _, err := os.Stat(filepath.FromSlash(path.Clean(m[1]))); err != nil {
				t.Errorf("%s links to %s: %v", name, m[1], err)
			}
		}
	}
	if _, ok := topics.Markdown("nothing-of-the-kind"); ok {
		t.Error("a topic that does not exist was found")
	}
}

func TestLines(t *testing.T) {
	const text = "# Head\n\nOne [link](x.md) **bold**\ngoes on.\n\n- item `a`\n  goes on\n\n| a | b |\n| --- | --- |\n| c | [d](e) |\n\n```\n  as *it* is\n```\n```text\n  and *this*\n```\n"
	want := []topics.Line{
		{topics.Title, "Head"}, {}, {topics.Text, "One link bold goes on."}, {},
		{topics.Item, "item `a` goes on"}, {}, {topics.Item, "a: b"}, {topics.Item, "c: d"}, {}, {topics.Sample, "  as *it* is"}, {topics.Verbatim, "  and *this*"},
	}
	got := topics.Lines(text)
	if len(got) != len(want) {
		t.Fatalf("got %q", got)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("line %d is %q, want %q", i, got[i], want[i])
		}
	}
}
