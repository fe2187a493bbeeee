package otio

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/lang/lines"
)

// A tree is a nested timeline that a test makes up.
type tree struct {
	kind, name     string
	used           bool // it has a source range
	from, duration int
	children       []*tree
}

func (n *tree) first() int {
	if n.used {
		return n.from
	}
	return 0
}

func (n *tree) length() (sum int) {
	if n.used {
		return n.duration
	}
	for _, c := range n.children {
		if n.kind == aStack {
			sum = max(sum, c.length())
		} else {
			sum += c.length()
		}
	}
	return sum
}

// at returns what is shown of an object at a frame of its own time: clips with the
// frame of their media, the topmost last. It asks for one frame after the other, and
// so knows nothing of ranges that are cut.
func (n *tree) at(x int) (shown []string) {
	if x < n.first() || x >= n.first()+n.length() {
		return nil
	}
	before := 0
	for _, c := range n.children {
		if in := x - before; in >= 0 && in < c.length() {
			shown = append(shown, c.at(in+c.first())...)
		}
		if n.kind == aTrack {
			before += c.length()
		}
	}
	if n.kind == aClip {
		shown = append(shown, fmt.Sprintf("%s %d", n.name, x))
	}
	return shown
}

func (n *tree) json() string {
	var children []string
	for _, c := range n.children {
		children = append(children, c.json())
	}
	span := ""
	if n.used {
		span = uses(n.from, n.duration)
	}
	return objectOf(n.kind, n.name, span, children...)
}

// grow makes up a tree; clips have names of their own.
func grow(t *rapid.T, kind string, depth int, clips *int) *tree {
	n := &tree{kind: kind}
	if kind == aClip || kind == "Gap" || rapid.IntRange(0, 2).Draw(t, "used") == 0 {
		n.used, n.from, n.duration = true, rapid.IntRange(-4, 8).Draw(t, "from"), rapid.IntRange(5, 20).Draw(t, "duration")
	}
	switch kind {
	case "Gap":
		return n
	case aClip:
		*clips++
		n.name = fmt.Sprint(*clips)
		return n
	}
	for range rapid.IntRange(1, 3).Draw(t, "children") {
		kinds := []string{aClip, aClip, "Gap", aStack, aTrack}
		if depth == 0 {
			kinds = kinds[:3]
		}
		n.children = append(n.children, grow(t, rapid.SampledFrom(kinds).Draw(t, "kind"), depth-1, clips))
	}
	return n
}

// What is laid out is, frame for frame, what is found by going down the tree for each
// frame; and a clip is covered if it is never the topmost.
func TestSampled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		clips := 0
		top := &tree{kind: aStack}
		for range rapid.IntRange(1, 3).Draw(t, "tracks") {
			top.children = append(top.children, grow(t, aTrack, 3, &clips))
		}
		text, _ := lines.Decode("f.otio", []byte(`{"OTIO_SCHEMA":"Timeline.1","tracks":`+top.json()+`}`))
		line, diags := Read(text)
		if len(diags) > 0 {
			t.Fatalf("%v", diags)
		}
		var items []Item
		for _, track := range line.Tracks {
			items = append(items, leaves(track.Items)...)
		}
		onTop := map[string]bool{}
		for r := -5; r < 150; r++ {
			var got []string
			for _, i := range items {
				if in := int64(r) - i.Record; in >= 0 && in < i.Frames {
					got = append(got, fmt.Sprintf("%s %d", i.Name, i.Source+in))
				}
			}
			want := top.at(r)
			if !slices.Equal(got, want) {
				t.Fatalf("frame %d shows %v, want %v\n%s", r, got, want, text.Content)
			}
			if last := len(want) - 1; last >= 0 {
				name, _, _ := strings.Cut(want[last], " ")
				onTop[name] = true
			}
		}
		for _, i := range items {
			if i.Covered == onTop[i.Name] {
				t.Fatalf("%s is covered: %v\n%s", i.Name, i.Covered, text.Content)
			}
		}
	})
}
