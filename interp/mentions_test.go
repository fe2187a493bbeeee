// Names: where they stand, and that nothing changes but names where all of them do.

package interp_test

import (
	"cmp"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp"
	"pullscore/interp/mention"
	"pullscore/lang"
	"pullscore/lang/testing/cases"
)

// A tree is the files of one plan, the plan itself as its first.
type tree struct {
	names []string
	texts map[string]string
}

func (f tree) read(path string) ([]byte, error) {
	if s, ok := f.texts[filepath.ToSlash(path)]; ok {
		return []byte(s), nil
	}
	return nil, &fs.PathError{Op: "open", Path: path, Err: os.ErrNotExist}
}

func (f tree) interpret() *interp.Result {
	return interp.Interpret(f.names[0], []byte(f.texts[f.names[0]]), interp.Options{ReadFile: f.read})
}

// stagedPlan has a name at every place where statements of scenes may have one.
const stagedPlan = `plan "The bell tower"
let slow = 2 s
with camera A, lens "50", stop f/4
camera A
  sensor 24.89 x 18.66 mm
lens "50"
  focal 50 mm
  ring 300 deg
  stops f/1.4 to f/16
  closest 50 cm
scene "The loft"
  origin "the hatch"
  mark HATCH at 1 m left, 2 m upstage
  mark "THE BELL" at 50 cm towards HATCH, 20 cm high
  subject OSKEL at HATCH, 20 cm right, eyes 1.6 m
  subject ROPE at "THE BELL", 10 cm downstage, 1 m high
  subject "MRS. VENN" at OSKEL, 1 m right, eyes 1.5 m
  voice TANNOY
  line OSKEL to "MRS. VENN"
  OSKEL: "Has it rung at all?", to "MRS. VENN", lasting 1.2 s
  nod("MRS. VENN")
  cue bell
  OSKEL moves to HATCH, 30 cm downstage over slow, on bell
  TANNOY: "Ring the bell.", on bell + slow, off
  "MRS. VENN": "It rang at noon.", lasting 1 s
  cut to 7E, on "noon", because "she knows"
  pause 3 s
shot 7E
  covers all
  subject CAT at OSKEL, 40 cm right, 30 cm high
  camera at HATCH, 3 m downstage, aims at "THE BELL"
  start on OSKEL
  rack to CAT, on TANNOY
  rack to "MRS. VENN", on "noon", because "she knows"
scene "The square below"
  mark HATCH at 0 m right
  subject OSKEL at HATCH, eyes 1.6 m
  OSKEL: "It rang.", lasting 1 s
shot 7C
  covers OSKEL to end
  camera at HATCH, 3 m downstage, aims at OSKEL
  start on OSKEL
scene "The loft again"
  mark LADDER at 2 m right
  subject OSKEL at LADDER, eyes 1.6 m
  subject "MRS. VENN" at OSKEL, 1 m left, eyes 1.5 m
  subject ROPE at 2 m upstage
  OSKEL: "Has it rung at all?", to "MRS. VENN", lasting 1.2 s
  cue bell
  "MRS. VENN": "It rang at noon.", lasting 1 s
  cut to 7B, on "noon"
shot 7A
  covers "rung" to bell + 2 s
  camera at LADDER, 3 m downstage, 1.4 m high, aims at OSKEL and "MRS. VENN", 2 deg left
  measured "MRS. VENN" 3.4 m
  measured OSKEL at LADDER 3.1 m
  subject CUP at OSKEL, 20 cm left, 1 m high
  start on OSKEL
  pan to ROPE, landing on "noon", over 1 s
  rack to CUP, with pan
  camera moves to LADDER, 2 m downstage over 1 s, on bell
shot 7B
  runs with 7A
  matches 7A
  camera as in 7A, aims at "MRS. VENN"
  start on "MRS. VENN"
shot 7D
  places as at bell
  camera at ROPE, 2 m downstage, aims at ROPE
  start on ROPE
  action "it swings", lasting 2 s
move nod(WHO)
  action "{WHO} nods", lasting 0.4 s
`

// trees returns every plan of the corpora with the files that it uses.
func trees(t *testing.T) (list []tree) {
	t.Helper()
	others := map[string]string{"kit.pull": kitText}
	for i := 0; i+1 < len(shuffledFiles); i += 2 {
		others[shuffledFiles[i]] = shuffledFiles[i+1]
	}
	list = append(list, tree{[]string{"plan.pull"}, map[string]string{"plan.pull": stagedPlan}})
	for _, plan := range allLines(t).plans {
		texts := map[string]string{"plan.pull": strings.Join(plan, "\n") + "\n"}
		for name, text := range others {
			texts[name] = text
		}
		list = append(list, tree{[]string{"plan.pull", "kit.pull"}, texts})
	}
	err := filepath.WalkDir("../examples", func(path string, e fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".pull" {
			return err
		}
		res, err := interp.Read(path, interp.Options{})
		if err != nil {
			return err
		}
		f := tree{texts: map[string]string{}}
		for _, name := range res.Files {
			text, err := os.ReadFile(name)
			if err != nil {
				continue
			}
			f.texts[filepath.ToSlash(name)] = string(text)
			if filepath.Ext(name) == ".pull" {
				f.names = append(f.names, name)
			}
		}
		list = append(list, f)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// nodes returns the name nodes of a file that name something of a plan.
func nodes(f *lang.File) (list []lang.Range, called []string) {
	add := func(s lang.Statement) {
		if bad, ok := s.(*lang.Bad); ok && bad.Partial != nil {
			s = bad.Partial
		}
		for part := range lang.Parts(s) {
			switch x := part.(type) {
			case *lang.Name:
				list, called = append(list, x.Range()), append(called, x.Text)
			case *lang.Expr:
				if x.Kind == lang.ExprName {
					list, called = append(list, x.Range()), append(called, x.Ref)
				}
			}
		}
	}
	for _, s := range f.Body {
		add(s)
	}
	for _, sec := range f.Sections {
		add(sec.Head)
		for _, s := range sec.Body {
			add(s)
		}
	}
	return list, called
}

// shotRefs returns where statements of a file speak of shots, and of which.
func shotRefs(f *lang.File) (list []lang.Range, of []string) {
	for _, sec := range f.Sections {
		for _, s := range sec.Body {
			for part := range lang.Parts(s) {
				if ref, ok := part.(*lang.ShotRef); ok {
					list, of = append(list, ref.Range()), append(of, ref.ID)
				}
			}
		}
	}
	return list, of
}

// mentioned reports the names of a plan that are no mention. A name that nothing
// declares is none; it returns how many there are, and how many of those.
func (f tree) mentioned(t *testing.T, res *interp.Result) (seen, unknown int) {
	at, declared, shots := map[lang.Range]bool{}, map[string]bool{}, map[string]bool{}
	for _, m := range res.Names() {
		shots[m.Name] = shots[m.Name] || m.Kind == mention.Shot && m.Declares
		at[m.Range] = true
		if m.Kind != mention.Word && m.Kind != mention.Shot {
			declared[m.Name] = true
		}
		if text := res.Sources[m.Range.File]; m.Range.End.Offset > len(text) || m.Range.Start.Offset >= m.Range.End.Offset {
			t.Fatalf("%s: %+v lies outside of its file", f.names[0], m)
		}
	}
	for name, source := range res.Sources {
		if filepath.Ext(name) != ".pull" {
			continue
		}
		file, _ := lang.Parse(name, source)
		refs, of := shotRefs(file)
		for i, place := range refs {
			if shots[of[i]] && !at[place] {
				t.Errorf("%s:%d: shot %s is no mention of anything", name, place.Start.Line, of[i])
			}
		}
		list, called := nodes(file)
		for i, place := range list {
			seen++
			switch line := file.Line(place.Start.Line); {
			case at[place]:
			case !declared[called[i]]:
				unknown++
			case called[i] == "GUEST" && line == "let lost = GUEST": // a name of one shot, in a let of all
			default:
				t.Errorf("%s:%d:%d: %s is no mention of anything:\n%s", name, place.Start.Line, place.Start.Column, called[i], line)
			}
		}
	}
	return seen, unknown
}

// renamed returns the files with the mentions of each family called something else.
func (f tree) renamed(t *testing.T, all []interp.Mention, fresh func(family []interp.Mention, n int) string) (out tree, families int) {
	t.Helper()
	type edit struct {
		at   lang.Range
		text string
	}
	edits := map[string][]edit{}
	done := map[lang.Range]bool{}
	for _, m := range all {
		if m.Kind == mention.Word || m.Kind == mention.Shot || done[m.Range] {
			continue
		}
		families++
		family := interp.FamilyOf(all, m)
		name := fresh(family, families)
		for _, other := range family {
			if done[other.Range] {
				t.Fatalf("%v belongs to two families", other)
			}
			done[other.Range] = true
			text, ok := other.Write(name)
			if !ok {
				t.Fatalf("%v cannot be written %s", other, name)
			}
			edits[other.Range.File] = append(edits[other.Range.File], edit{other.Range, text})
		}
	}
	out = tree{f.names, map[string]string{}}
	for name, text := range f.texts {
		list := edits[name]
		slices.SortFunc(list, func(a, b edit) int { return cmp.Compare(b.at.Start.Offset, a.at.Start.Offset) })
		for _, e := range list {
			text = text[:e.at.Start.Offset] + e.text + text[e.at.End.Offset:]
		}
		out.texts[name] = text
	}
	return out, families
}

// outcome is what a plan comes to, without its names.
func outcome(res *interp.Result) (list []string) {
	for _, d := range res.Findings {
		line := fmt.Sprint(d.Range.File, d.Range.Start.Line, d.Code, d.Severity, d.Shot, d.Pull, d.Time, d.Cause, len(d.Related), d.Figures)
		for _, c := range d.Cures {
			line += fmt.Sprint(" ", c.Value, c.Unit)
		}
		list = append(list, line)
	}
	slices.Sort(list) // findings at one place stand in the order of their messages
	text, err := json.Marshal(res.Plan)
	if err != nil {
		return append(list, err.Error())
	}
	var tree any
	if err := json.Unmarshal(text, &tree); err != nil {
		return append(list, err.Error())
	}
	numbersIn(tree, "", &list)
	return list
}

func numbersIn(v any, path string, list *[]string) {
	switch v := v.(type) {
	case map[string]any:
		keys := make([]string, 0, len(v))
		for k := range v {
			keys = append(keys, k)
		}
		slices.Sort(keys)
		for _, k := range keys {
			numbersIn(v[k], path+"."+k, list)
		}
	case []any:
		for i, x := range v {
			numbersIn(x, fmt.Sprint(path, i), list)
		}
	case string:
	default:
		*list = append(*list, fmt.Sprint(path, " ", v))
	}
}

// notTheSame are plans whose findings or figures hang on what a name is, by their first
// line, with the reason.
var notTheSame = map[string]string{
	`plan "Shots and cues, by clips and markers"`:                                   "markers of the cut have the names of cues",
	`plan "Subtitles that name one speaker as the plan does"`:                       "subtitles name the speakers",
	`plan "A talk that nobody wrote"`:                                               "subtitles name the speakers",
	`plan "A page that was revised"`:                                                "the page names the speakers",
	`# A plan that follows the cut. Its lines come from the page; when they are`:    "the page names the speakers",
	`plan "Names twice, and differing in case"`:                                     "the names differ only in case",
	`plan "Names that move and cue share"`:                                          "two things have one name",
	`# Clauses: any order, each once.`:                                              "a line without quotes says a name",
	`# Names with a blank.`:                                                         "a name that cannot be read becomes one that can",
	`# A line under the wrong header names the right one, and the section goes on.`: "a line in the wrong place is told otherwise where its name has quotes",
	`# A keyword is no name.`:                                                       "the names differ only in case",
	`# Names that need quotes.`:                                                     "a name that cannot be read becomes one that can",
	`plan "One mistake a line"`:                                                     "a name that cannot be read becomes one that can",
	`plan "Parameters in texts"`:                                                    "what is in braces is nearly a name",
	`plan "A kit that is not there is one mistake"`:                                 "an unknown name is nearly one that is known",
	`plan "A spoken line that cannot be read may be the one that is meant"`:         "an unknown name is nearly one that is known",
}

// differs returns the first thing that differs in what two plans come to.
func differs(a, b *interp.Result) string {
	x, y := outcome(a), outcome(b)
	for i := range max(len(x), len(y)) {
		switch {
		case i >= len(x):
			return "new: " + y[i]
		case i >= len(y):
			return "gone: " + x[i]
		case x[i] != y[i]:
			return x[i] + " became " + y[i]
		}
	}
	return ""
}

// freshNames are two kinds of names that no plan has: one that stands without quotes,
// and one that has to have them wherever a name may.
var freshNames = []func(family []interp.Mention, n int) string{
	func(family []interp.Mention, n int) string { return fmt.Sprintf("Qx%dz", n) },
	func(family []interp.Mention, n int) string {
		quoted := fmt.Sprintf(`Q x%d "z`, n)
		for _, m := range family {
			if _, ok := m.Write(quoted); !ok {
				return fmt.Sprintf("Qx%dz", n)
			}
		}
		return quoted
	},
}

// Every name of every plan is a mention, unless nothing declares it. Where every name is
// another, findings and figures are the same.
func TestNames(t *testing.T) {
	seen, unknown, renames, hang := 0, 0, 0, map[string]bool{}
	for _, f := range trees(t) {
		first, _, _ := strings.Cut(f.texts[f.names[0]], "\n")
		before := f.interpret()
		all, none := f.mentioned(t, before)
		seen, unknown = seen+all, unknown+none
		kinds := freshNames
		if notTheSame[first] == "" { // one of the two, whatever other plans there are
			kinds = freshNames[len(f.texts[f.names[0]])%len(freshNames):][:1]
		}
		d, other := "", tree{}
		for _, fresh := range kinds {
			var n int
			if other, n = f.renamed(t, before.Names(), fresh); d == "" {
				d = differs(before, other.interpret())
			}
			renames += n
		}
		switch {
		case d == "":
		case notTheSame[first] != "":
			hang[first] = true
		default:
			t.Errorf("%s: %s\n%s", f.names[0], d, other.texts[f.names[0]])
		}
	}
	for first := range notTheSame {
		if !hang[first] {
			t.Errorf("%s is the same whatever its names are", first)
		}
	}
	if unknown > seen/8 {
		t.Errorf("nothing declares %d of %d names", unknown, seen)
	}
	t.Logf("%d names, %d of them declared by nothing; %d changed", seen, unknown, renames)
}

// The same holds of generated plans.
func TestRenamedGeneratedPlans(t *testing.T) {
	cases.Check(t, 20, func(rt *rapid.T) {
		f := tree{[]string{"plan.pull"}, map[string]string{"plan.pull": genPlan(rt)}}
		before := f.interpret()
		fresh := freshNames[rapid.IntRange(0, len(freshNames)-1).Draw(rt, "fresh")]
		if other, _ := f.renamed(t, before.Names(), fresh); differs(before, other.interpret()) != "" {
			rt.Fatalf("%s\n%s", differs(before, other.interpret()), other.texts["plan.pull"])
		}
	})
}
