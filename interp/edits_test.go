// The edits of cures: written into the files of a plan they cure what they are told for,
// in that shot alone.

package interp_test

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/lang"
	"pullscore/lang/testing/chunk"
)

// planFiles are the files of a plan, some of them with edits, by path; others are read.
type planFiles map[string]string

func (w planFiles) interpret(path string) *interp.Result {
	read := func(path string) ([]byte, error) {
		if text, ok := w[filepath.ToSlash(path)]; ok {
			return []byte(text), nil
		}
		return os.ReadFile(path)
	}
	src, _ := read(path)
	return interp.Interpret(path, src, interp.Options{ReadFile: read})
}

// with returns the files with edits made, and where a place of them is then.
func (w planFiles) with(t *testing.T, res *interp.Result, edits []lang.Edit) (made planFiles, moved func(lang.Range) lang.Pos) {
	t.Helper()
	made = maps.Clone(w)
	byFile := map[string][]lang.Edit{}
	for _, e := range edits {
		byFile[e.Range.File] = append(byFile[e.Range.File], e)
	}
	for file, list := range byFile {
		text, ok := lang.ApplyEdits(res.Sources[file], list)
		if !ok {
			t.Fatalf("edits that do not fit %s: %+v", file, list)
		}
		made[filepath.ToSlash(file)] = string(text)
	}
	return made, func(at lang.Range) lang.Pos {
		p := at.Start
		for _, e := range byFile[at.File] {
			if e.Range.End.Offset <= at.Start.Offset {
				p.Offset += len(e.Text) - (e.Range.End.Offset - e.Range.Start.Offset)
			}
		}
		return p
	}
}

// cureTold writes each cure of a plan, and holds that its finding is gone, that no error is
// new, and that the other shots are told what they were.
func cureTold(t *testing.T, w planFiles, path string) (edited, unedited map[string]int) {
	t.Helper()
	edited, unedited = map[string]int{}, map[string]int{}
	res := w.interpret(path)
	for _, f := range res.Findings {
		for _, c := range f.Cures {
			kind := strings.Trim(c.Text, "0123456789. ")
			if len(c.Edits) == 0 {
				unedited[f.Code+": "+kind]++
				continue
			}
			edited[f.Code]++
			made, moved := w.with(t, res, c.Edits)
			again := made.interpret(path)
			at := moved(f.Range)
			if f.Scene != "" && f.Shot == "" { // several may stand on the line of the scene
				if n, m := countOf(again, f.Code), countOf(res, f.Code); n >= m {
					t.Errorf("%s: %s is not cured by %q: %d of that code, and %d before\n%+v", path, f.Message, c.Text, n, m, c.Edits)
				}
				at = lang.Pos{Offset: -1}
			}
			for _, d := range again.Findings {
				if d.Code == f.Code && d.Shot == f.Shot && d.Range.File == f.Range.File && d.Range.Start.Offset == at.Offset && f.Code != "macro" {
					t.Errorf("%s: %s is not cured by %q: %s\n%+v", path, f.Message, c.Text, d.Message, c.Edits)
				}
			}
			if n, m := countErrors(again.Findings), countErrors(res.Findings); n > m {
				t.Errorf("%s: %q of %s brings %d errors more\n%+v", path, c.Text, f.Code, n-m, c.Edits)
			}
			if f.Shot != "" && f.Code != "macro" {
				if is, was := ofOthers(again, f.Shot), ofOthers(res, f.Shot); !slices.Equal(is, was) {
					t.Errorf("%s: %q of shot %s changes what others are told, from\n%s\nto\n%s", path, c.Text, f.Shot, strings.Join(was, "\n"), strings.Join(is, "\n"))
				}
			}
		}
	}
	return edited, unedited
}

// countOf counts the findings of a code.
func countOf(res *interp.Result, code string) (n int) {
	for _, d := range res.Findings {
		if d.Code == code {
			n++
		}
	}
	return n
}

// ofOthers lists what is told of the shots but one.
func ofOthers(res *interp.Result, shot string) (list []string) {
	for _, d := range res.Findings {
		if d.Shot != shot && d.Shot != "" {
			list = append(list, d.Shot+" "+told(d))
		}
	}
	slices.Sort(list)
	return list
}

func TestEditsOfCuresHold(t *testing.T) {
	edited, unedited := map[string]int{}, map[string]int{}
	add := func(e, u map[string]int) {
		for k, n := range e {
			edited[k] += n
		}
		for k, n := range u {
			unedited[k] += n
		}
	}
	files, err := filepath.Glob("testdata/findings/*.pull")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		chunks, err := chunk.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range chunks {
			w := planFiles{"plan.pull": string(c.Source), "kit.pull": kitText}
			for i := 0; i+1 < len(others); i += 2 {
				w[others[i]] = others[i+1]
			}
			add(cureTold(t, w, "plan.pull"))
		}
	}
	examples, err := filepath.Glob("../examples/*.pull")
	if err != nil || len(examples) == 0 {
		t.Fatal(examples, err)
	}
	for _, path := range examples {
		add(cureTold(t, planFiles{}, path))
	}
	for _, code := range []string{"hard-to-land", "re-grip", "out-of-frame", "after-the-shot", "stop-not-on-lens", "before-the-shot", "goes-soft", "play-loses"} {
		if edited[code] == 0 {
			t.Errorf("no cure of %s has edits", code)
		}
	}
	t.Logf("with edits: %v\nwithout: %v", edited, unedited)
}

// Where a line belongs to other shots too, a cure is written into the shot, or has no edits.
func TestEditsStayInTheirShot(t *testing.T) {
	const (
		kit = "camera A\n  sensor 24.89 x 18.66 mm\n  on %ON\n  iso 800\n  shutter 180 deg\n" +
			"lens \"75\"\n  focal 75 mm\n  stops f/1.8 to f/22\n  closest 75 cm\n  ring 310 deg, diameter 110 mm\n"
		file  = "plan \"Test\"\nwatched on 12 m screen from 18 m\nuse \"kit.pull\"\nsubject ANNA at 1 m, 60 cm left\nsubject BRAM at 110 cm\n"
		light = "shot 1\n  with stop f/2.8, meter f/5.6\n  start on BRAM\n  BRAM: \"Here.\"\n"
		other = "shot 2\n  with stop f/8\n  start on BRAM\n"
		rack  = "  start on BRAM\n  ANNA: \"So this is the word by the river.\"\n"
		long  = "  start on BRAM\n  BRAM: \"Word by the river and over the hill, and on.\"\n"
		ring  = "  with focal 105 mm, stop f/8\n  start on BRAM\n  rack to 38 cm, on 1 s, over 2 s\n"
		fast  = "move go(who)\n  rack to who, on \"word\", over 50 ms\n"
	)
	for _, c := range []struct{ name, plan, code, cure, in, want string }{
		{"the camera of the only shot", file + light, "light", "iso", "kit.pull", "  iso 250\n"},
		{"the meter beside it", file + light, "light", "iso", "plan.pull", "with stop f/2.8, meter f/3.1\n"},
		{"the camera of two shots", file + light + other, "light", "iso", "", ""},
		{"an nd is of the shot", file + light + other, "light", "nd", "plan.pull", "with stop f/2.8, meter f/5.6, nd 0.6\n"},
		{"a line of its own below the header", file + "with stop f/1.8, gear 3\nshot 1\n" + rack + "  rack to ANNA, landing on \"word\", over 1 s\n" + other, "never-sure", "stop", "plan.pull", "shot 1\n  with stop f/3.2\n  start"},
		{"a move used once", file + fast + "shot 1\n  with stop f/2.8\n" + rack + "  go(ANNA)\n" + other, "no-time-to-move", "over", "plan.pull", "rack to who, on \"word\", over 0."},
		{"a move used twice", file + fast + "shot 1\n  with stop f/2.8\n" + rack + "  go(ANNA)\n" + other + "  ANNA: \"A word.\"\n  go(ANNA)\n", "no-time-to-move", "over", "", ""},
		{"a move used twice by way of another", file + fast + "move both(who)\n  go(who)\n  go(BRAM)\nshot 1\n  with stop f/2.8\n" + rack + "  both(ANNA)\n", "no-time-to-move", "over", "", ""},
		{"a subject of the film", file + "shot 1\n  with stop f/2.8\n  start on ANNA\n" + other, "out-of-frame", "ANNA", "plan.pull", "shot 1\n  subject ANNA at 1 m, "},
		{"a subject of the only shot", file + "shot 1\n  with stop f/2.8\n  start on ANNA\n", "out-of-frame", "ANNA", "plan.pull", "left\nsubject BRAM"},
		{"a camera in the hand", file + "shot 1\n  with stop f/2.8\n" + long, "drifts-soft", "on tripod", "kit.pull", "  on tripod\n"},
		{"a camera in the hand for two shots", file + "shot 1\n  with stop f/2.8\n" + long + other, "drifts-soft", "on tripod", "", ""},
		{"the tape", file + "shot 1\n" + ring, "macro", "tape", "plan.pull", "plan \"Test\"\ntape from lens\n"},
		{"the tape that is said", file + "tape from sensor\nshot 1\n" + ring, "macro", "tape", "plan.pull", "\ntape from lens\n"},
		{"the tape of two shots", file + "shot 1\n" + ring + other, "macro", "tape", "", ""},
	} {
		on := "tripod"
		if c.code == "drifts-soft" {
			on = "hand"
		}
		w := planFiles{"plan.pull": c.plan, "kit.pull": strings.Replace(kit, "%ON", on, 1)}
		if c.code == "macro" {
			w["kit.pull"] = strings.NewReplacer("focal 75 mm", "focal 24 mm to 105 mm", "closest 75 cm", "closest 35 cm").Replace(w["kit.pull"])
		}
		cureTold(t, w, "plan.pull")
		res := w.interpret("plan.pull")
		found := false
		for _, f := range res.Findings {
			for _, k := range f.Cures {
				if found || f.Code != c.code || f.Shot != "1" || !strings.HasPrefix(k.Text, c.cure) {
					continue
				}
				found = true
				if c.in == "" && len(k.Edits) > 0 || c.in != "" && len(k.Edits) == 0 {
					t.Errorf("%s: %q has the edits %+v", c.name, k.Text, k.Edits)
					continue
				}
				if made, _ := w.with(t, res, k.Edits); !strings.Contains(made[c.in], c.want) {
					t.Errorf("%s: %q gives\n%s", c.name, k.Text, made[c.in])
				}
			}
		}
		if !found {
			t.Errorf("%s: no %q of %s in %v", c.name, c.cure, c.code, res.Findings)
		}
	}
}

// Every fix of the findings under testdata/findings takes its finding away, and brings no
// other error. One that declares a subject leaves its place to be written.
func TestFixesOfFindingsHold(t *testing.T) {
	files, err := filepath.Glob("testdata/findings/*.pull")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	fixes, declared, errors := 0, 0, 0
	for _, file := range files {
		chunks, err := chunk.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range chunks {
			w := planFiles{"plan.pull": string(c.Source), "kit.pull": kitText}
			for i := 0; i+1 < len(others); i += 2 {
				w[others[i]] = others[i+1]
			}
			res := w.interpret("plan.pull")
			for _, d := range res.Findings {
				if d.Severity == lang.Error {
					errors++
				}
				for _, f := range d.Fixes {
					fixes++
					if strings.HasPrefix(f.Title, "Declare ") {
						declared++
					}
					made, _ := w.with(t, res, f.Edits)
					checkFixed(t, d, f, errorsOf(res), errorsOf(made.interpret("plan.pull")))
				}
			}
		}
	}
	if fixes < 15 || declared == 0 {
		t.Errorf("%d fixes, of which %d declare a subject", fixes, declared)
	}
	t.Logf("%d fixes of %d errors", fixes, errors)
}

// ofWhatCanBeRead are errors of lines that could not be read before.
var ofWhatCanBeRead = []string{"circle", "racks-overlap", "inside-closest", "no-begins-at"}

// checkFixed compares errors before and after a fix.
func checkFixed(t *testing.T, d lang.Diagnostic, f lang.Fix, before, after map[string]int) {
	t.Helper()
	if key := d.Code + ": " + d.Message; after[key] >= before[key] {
		t.Errorf("%s is still told after %q: %+v", key, f.Title, f.Edits)
	}
	for key, n := range after {
		code, _, _ := strings.Cut(key, ": ")
		if n > before[key] && !slices.Contains(ofWhatCanBeRead, code) && !(strings.HasPrefix(f.Title, "Declare ") && strings.HasPrefix(key, "expected-value: ")) {
			t.Errorf("%q for %s brings %s", f.Title, d.Message, key)
		}
	}
}

// errorsOf counts what cannot be done in a plan.
func errorsOf(res *interp.Result) map[string]int {
	n := map[string]int{}
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			n[d.Code+": "+d.Message]++
		}
	}
	return n
}
