package lang

import (
	"strings"
	"testing"
)

const merged = `plan "Night ferry"
<<<<<<< HEAD
subject ILKA at 1.7 m
||||||| base
subject ILKA at 1.6 m
=======
subject ILKA at 1.8 m
>>>>>>> the new chart
shot 1
  with stop f/4
  start on ILKA
`

// A merge that nobody has resolved is one finding however much of the file it
// spoils, and the formatter leaves it alone.
func TestUnresolvedMerge(t *testing.T) {
	many := strings.Repeat(merged, 40)
	bare := strings.NewReplacer(" HEAD", "", " the new chart", "", "|||||||", "#").Replace(merged)
	for _, c := range []struct{ name, src, says string }{
		{"one", merged, "this file holds an unresolved merge"},
		{"many", many, "this file holds an unresolved merge in 40 places"},
		{"no labels", bare, "this file holds an unresolved merge"},
		{"lines in CR LF", strings.ReplaceAll(merged, "\n", "\r\n"), "this file holds an unresolved merge"},
		{"to the end", strings.TrimSuffix(merged[:strings.Index(merged, "shot")], "\n"), "this file holds an unresolved merge"},
	} {
		f, diags := Parse("plan.pull", []byte(c.src))
		if len(diags) != 1 || diags[0].Code != "unresolved-merge" || diags[0].Message != c.says || len(f.Body)+len(f.Sections) > 0 {
			t.Errorf("%s: %+v", c.name, diags)
			continue
		}
		checkStyle(t, diags[0])
		if r := diags[0].Range; r.Start.Line != 2 || c.src[r.Start.Offset:r.End.Offset] != markOurs || !strings.HasPrefix(diags[0].Detail, "Lines 2 to 8 hold two versions.") {
			t.Errorf("%s: %+v", c.name, diags[0])
		}
		if got := string(Format([]byte(c.src))); got != c.src {
			t.Errorf("%s becomes %q", c.name, got)
		}
		checkFormat(t, []byte(c.src))
	}
}

// Signs that only look like the marks of a merge are what they are.
func TestNoMerge(t *testing.T) {
	for name, src := range map[string]string{
		"comments":     "# <<<<<<< a\n# =======\n# >>>>>>> b\nplan \"A\"\n",
		"texts":        "plan \"<<<<<<< ======= >>>>>>>\"\n",
		"not whole":    "<<<<<<< a\nplan \"A\"\n>>>>>>> b\n",
		"longer":       "<<<<<<<< a\n========\n>>>>>>>> b\n",
		"other order":  "=======\n>>>>>>> b\n<<<<<<< a\n",
		"glued":        "<<<<<<<a\n=======\n>>>>>>>b\n",
		"indented":     "  <<<<<<< a\n  =======\n  >>>>>>> b\n",
		"nothing else": "<<<<<<<",
	} {
		_, diags := Parse("plan.pull", []byte(src))
		for _, d := range diags {
			if d.Code == "unresolved-merge" {
				t.Errorf("%s: %+v", name, d)
			}
		}
		checkFormat(t, []byte(src))
	}
}
