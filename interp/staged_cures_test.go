// Cures in shots of scenes.

package interp_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// A stagedText is a plan with scenes, and the files that it uses.
type stagedText struct {
	name, text string
	tree
}

// stagedTexts returns the staged examples and some that are like them but have more to
// cure: a quick lens, a wide stop, less time.
func stagedTexts(t *testing.T) (list []stagedText) {
	t.Helper()
	paths, err := filepath.Glob("../examples/staged/*.pull")
	if err != nil || len(paths) == 0 {
		t.Fatal(err)
	}
	for _, path := range paths {
		res, err := interp.Read(path, interp.Options{})
		if err != nil {
			t.Fatal(err)
		}
		f := tree{names: []string{path}, texts: map[string]string{}}
		for _, name := range res.Files {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			f.texts[filepath.ToSlash(name)] = string(text)
		}
		text := f.texts[path]
		for _, changed := range []string{
			text,
			strings.NewReplacer("over 1.2 s", "over 0.3 s", "over 1 s", "over 0.4 s", "stop f/4", "stop f/2", "stop f/2.8", "stop f/2").Replace(text),
			strings.NewReplacer("landing on", "on", "stop f/4", "stop f/16", "stop f/2.8", "stop f/16").Replace(text),
			strings.NewReplacer(", with pan", "", ", with boom", "", "deep 4 cm", "deep 40 cm").Replace(text),
		} {
			list = append(list, stagedText{path, changed, f})
		}
	}
	return append(list, stagedText{"plan.pull", stagedPlan, tree{names: []string{"plan.pull"}, texts: map[string]string{}}})
}

func (s stagedText) with(text string) *interp.Result {
	return interp.Interpret(s.name, []byte(text), interp.Options{ReadFile: s.read})
}

// besideShot returns what a plan has beside one of its shots, without what is found in it and
// the places in the text, which may move down.
func besideShot(t *testing.T, p *plan.Plan, but string) string {
	t.Helper()
	text := ""
	add := func(v any) {
		raw, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		text += string(raw) + "\n"
	}
	for _, sc := range p.Scenes {
		add([]any{sc.Title, sc.Marks, sc.Subjects, sc.Duration})
		for _, l := range sc.Lines {
			add([]any{l.Who, l.Text, l.Start, l.End, l.Words})
		}
	}
	for _, s := range p.Shots {
		if s.ID == but || s.Staging != nil && s.RunsWith == but {
			continue
		}
		add([]any{s.ID, s.Duration, s.Lens, s.Camera, s.Subjects, s.CameraPath, s.Turns})
		for _, pull := range s.Pulls {
			add([]any{pull.Start, pull.Land, pull.FromM, pull.ToM, pull.Chance})
		}
	}
	return text
}

// A cure of a set-up changes no other, and nothing in the scene. What it cures is gone.
func TestCuresOfStagedShotsHold(t *testing.T) {
	tried := map[string]int{}
	for _, s := range stagedTexts(t) {
		res := s.with(s.text)
		for _, f := range res.Findings {
			for _, c := range f.Cures {
				made, ok := lang.ApplyEdits([]byte(s.text), c.Edits)
				if !ok {
					t.Errorf("%s: %q cannot be written by %+v", f.Code, c.Text, c.Edits)
					continue
				}
				tried[f.Code]++
				cured := s.with(string(made))
				if n, m := countErrors(cured.Findings), countErrors(res.Findings); n > m {
					t.Errorf("%s: %q brings %d errors more\n%s", f.Code, c.Text, n-m, made)
				}
				line := f.Range.Start.Line
				if !strings.HasSuffix(c.Text, " after it") {
					line += strings.Count(string(made), "\n") - strings.Count(s.text, "\n")
				}
				if slices.ContainsFunc(cured.Findings, func(d lang.Diagnostic) bool {
					return d.Code == f.Code && d.Range.Start.Line == line && d.Shot == f.Shot && (d.Shot != "" || d.Message == f.Message)
				}) {
					t.Errorf("%s is not cured by %q\n%s", f.Code, c.Text, made)
				}
				if f.Shot == "" {
					continue // of the scene
				}
				if was, is := besideShot(t, res.Plan, f.Shot), besideShot(t, cured.Plan, f.Shot); was != is {
					t.Errorf("%s of %s: %q changes more than that shot\n%s\n%s\n%s", f.Code, f.Shot, c.Text, made, was, is)
				}
			}
		}
	}
	for _, code := range []string{"hard-to-land", "too-deep", "faint", "goes-soft", "does-not-match", "cuts-into-line", "not-on-screen"} {
		if tried[code] == 0 {
			t.Errorf("no cure of %s was tried", code)
		}
	}
	t.Logf("cures tried: %v", tried)
}

// A shot that is nearly named is offered, and with it the mistake is gone.
func TestNearShots(t *testing.T) {
	for was, is := range map[string]string{"runs with 7A": "runs with 7a", "cut to 7E": "cut to 7-E", "matches 7A": "matches 7a"} {
		text := strings.Replace(stagedPlan, was, is, 1)
		s := stagedText{"plan.pull", text, tree{names: []string{"plan.pull"}, texts: map[string]string{}}}
		res := s.with(text)
		at := slices.IndexFunc(res.Findings, func(d lang.Diagnostic) bool { return d.Code == "unknown-shot" })
		if at < 0 || len(res.Findings[at].Fixes) != 1 {
			t.Errorf("%s: %v", is, res.Findings)
			continue
		}
		made, ok := lang.ApplyEdits([]byte(text), res.Findings[at].Fixes[0].Edits)
		if !ok || string(made) != stagedPlan {
			t.Errorf("%s: %s", is, made)
		}
		if slices.ContainsFunc(s.with(string(made)).Findings, func(d lang.Diagnostic) bool { return d.Code == "unknown-shot" }) {
			t.Errorf("%s: it is still unknown in\n%s", is, made)
		}
	}
	text := strings.Replace(stagedPlan, "matches 7A", "matches quite-another", 1)
	res := stagedText{"plan.pull", text, tree{texts: map[string]string{}}}.with(text)
	at := slices.IndexFunc(res.Findings, func(d lang.Diagnostic) bool { return d.Code == "unknown-shot" })
	if at < 0 || len(res.Findings[at].Fixes) > 0 || res.Findings[at].Detail != "There is 7E, 7C, 7A, 7B, 7D." {
		t.Errorf("%v", res.Findings)
	}
}

// Fixes of what a staged shot says wrongly mend it.
func TestFixesOfStagedShots(t *testing.T) {
	for code, change := range map[string][2]string{
		"scene-sets-times": {"  start on OSKEL\n  rack to CAT", "  start on OSKEL\n  pause 1 s\n  rack to CAT"},
		"no-camera-place":  {"  camera as in 7A, aims at \"MRS. VENN\"\n", ""},
	} {
		text := strings.Replace(stagedPlan, change[0], change[1], 1)
		s := stagedText{"plan.pull", text, tree{texts: map[string]string{}}}
		res := s.with(text)
		at := slices.IndexFunc(res.Findings, func(d lang.Diagnostic) bool { return d.Code == code })
		if at < 0 || len(res.Findings[at].Fixes) != 1 {
			t.Errorf("%s: %v", code, res.Findings)
			continue
		}
		made, ok := lang.ApplyEdits([]byte(text), res.Findings[at].Fixes[0].Edits)
		if code == "no-camera-place" { // the distance is left to be written
			made = []byte(strings.Replace(string(made), "subject \"MRS. VENN\" at \n", "subject \"MRS. VENN\" at 2 m\n", 1))
		}
		if mended := s.with(string(made)); !ok || countErrors(mended.Findings) > 0 {
			t.Errorf("%s: %v\n%s", code, mended.Findings, made)
		}
	}
}
