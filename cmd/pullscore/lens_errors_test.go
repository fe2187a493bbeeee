// Every row of testdata/lens-errors.tsv comes out of a plan, or of another program's lens
// file: its code, severity, place, message and detail.

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// An errorCase makes one row of the table. A § in the plan stands before the place.
type errorCase struct {
	plan  string // of a plan, or of an OpenTrackIO file where it begins with {
	looks bool   // its figures are those of this plan, and only the words are the row's
	// elsewhere is set where the row names another place than the finding has, and why.
	elsewhere string
	// detail stands in place of the row's, where the cure that the row has in it is
	// printed by itself.
	detail string
}

// kitOf is a plan whose lens has these lines, and racks from FAR to a place.
func kitOf(lens string) string {
	return "rate 24\nlens \"50\"\n  focal 50 mm\n  stops f/1.8 to f/22\n" + lens
}

// rackOf is a plan with a rack, on a lens with these lines and with more at its places.
func rackOf(lens, subjects, with, shot string) string {
	return "plan \"A row\"\nrate 24\nwatched on 12 m screen from 18 m\n" + subjects +
		"camera A\n  sensor 24.89 x 14 mm\n  on tripod\n" +
		"lens \"50\"\n  focal 50 mm\n  stops f/1.8 to f/22\n" + lens +
		"shot 1\n  with camera A, lens \"50\", stop f/2.8" + with + "\n" + shot
}

const (
	twoSubjects = "subject FAR at 3 m\nsubject NEAR at 1.1 m\n"
	nearRack    = "  start on FAR\n  pause 1 s\n  §rack to NEAR, over 1 s, because \"it rings\"\n  hold 2 s\n"
	measured    = "  closest 45 cm\n  ring 300 deg, diameter 110 mm\n"
)

var errorCases = map[string]errorCase{
	"no-rim":              {plan: kitOf("  closest 45 cm\n  §mark 1 m at 84 mm\n  mark 2 m at 140 mm\n")},
	"no-throw":            {plan: kitOf("  closest 45 cm\n  §mark 1 m at 32 %\n  mark 2 m at 64 %\n")},
	"mixed-marks":         {plan: kitOf(measured + "  mark 1 m at 118 deg\n  mark 2 m at 180 deg\n  §mark 3 m at 84 mm\n")},
	"which-way":           {plan: kitOf(measured + "  §mark 1 m at 4 o'clock\n  mark 2 m at 2 o'clock\n")},
	"not-on-clock":        {plan: kitOf(measured + "  turns left\n  mark closest at 7 o'clock\n  §mark 1 m at 13 o'clock\n")},
	"whole-turn":          {plan: kitOf(measured + "  turns left\n  mark closest at 7 o'clock\n  mark 1 m at 4 o'clock\n  §mark 2 m at 4 o'clock\n")},
	"marks-out-of-order":  {plan: kitOf(measured + "  mark 60 cm at 50 deg\n  mark 1 m at 118 deg\n  §mark 2 m at 96 deg\n")},
	"mark-beyond-closest": {plan: kitOf(measured + "  §mark 40 cm at 3 deg\n  mark 1 m at 118 deg\n")},
	"marks-disagree":      {plan: "units imperial\n" + kitOf("  closest 18 in\n  ring 300 deg\n  §mark 3' at 0 deg\n  mark 5' at 180 deg\n")},
	"marks-disagree 2":    {plan: kitOf("  closest 45 cm\n  ring 300 deg\n  mark 1 m at 118 deg\n  §mark 4 m at 312 deg\n")},
	"marks-disagree 3":    {plan: kitOf("  closest 45 cm\n  §ring 300 deg, girth 346 mm\n  mark closest at 0 mm\n  mark inf at 266 mm\n")},
	"marks-disagree 4":    {plan: kitOf("  closest 45 cm\n  §ring 300 deg, diameter 80 mm, girth 346 mm\n")},
	"lone-mark":           {plan: kitOf("  §mark 1 m at 118 deg\n")},
	"bad-mark":            {plan: kitOf(measured + "  mark 1 m at §118\n")},
	"ring-unknown": {plan: rackOf("  closest 45 cm\n", twoSubjects, "", nearRack), looks: true,
		elsewhere: "once a shot, at the first rack that it concerns"},
	"law-assumed": {plan: rackOf(measured, twoSubjects, "", nearRack), elsewhere: "once a shot, at the first rack that it concerns"},
	"few-marks": {plan: "units imperial\n" + rackOf("  closest 18 in\n  ring 300 deg, diameter 110 mm\n  mark 3' at 100 deg\n  mark 5' at 180 deg\n  mark 10' at 240 deg\n",
		"subject FAR at 5'\nsubject NEAR at 2'\n", "", nearRack)},
	"rough-mark": {plan: rackOf(measured+"  mark 60 cm at 50 deg\n  mark 1 m at 118 deg\n  mark 1.3 m at 150 deg\n  mark 2 m at 196 deg\n  mark 4 m at 244 deg\n  marks engraved, within 6 deg\n",
		twoSubjects, "", nearRack), looks: true},
	"beyond-marks": {plan: rackOf("  closest 45 cm\n  mark 60 cm at 50 deg\n  mark 1 m at 118 deg\n  mark 2 m at 180 deg\n",
		"subject FAR at 1.5 m\nsubject DOOR at 5 m\n", "", strings.ReplaceAll(nearRack, "NEAR", "DOOR"))},
	"inside-closest": {plan: "units imperial\n" + rackOf("  closest 2'\n  ring 300 deg, diameter 110 mm\n", "subject FAR at 8'\nsubject NEAR at 1'10\"\n", "", nearRack)},
	"which-format":   {plan: "camera B\n  sensor §super35\n"},
	"which-format 2": {plan: "camera B\n  sensor §aps-c\n"},
	"unknown-format": {plan: "camera B\n  sensor §sper16\n"},
	"play-loses": {plan: rackOf(measured+"  mark 60 cm at 50 deg\n  mark 1 m at 118 deg\n  mark 1.3 m at 150 deg\n  mark 2 m at 196 deg\n  mark 4 m at 244 deg\n  play 3 deg, marked to inf\n",
		twoSubjects, "", nearRack), looks: true, detail: "Approach from the near side (rack beyond and come back)."},
	"darkens": {plan: rackOf(measured+"  darkens f/2.8 to f/3.56 at 50 cm\n", "subject FAR at 3 m\nsubject NEAR at 50 cm\n", "", nearRack)},
	"beyond-farthest": {plan: rackOf(measured, "subject NEAR at 1.1 m\nsubject DOOR at 3 m\n", ", diopter 0.5",
		strings.NewReplacer("NEAR", "DOOR", "FAR", "NEAR").Replace(nearRack))},
	"tube-too-long": {plan: rackOf(measured, twoSubjects, ", tube §60 mm", strings.ReplaceAll(nearRack, "§", ""))},
	"oval": {plan: rackOf(measured+"  squeeze 2\n", twoSubjects, "", nearRack),
		elsewhere: "once a shot, at the first rack that it concerns"},
	"speed-light": {plan: rackOf(measured, twoSubjects, ", meter §f/2.8, shoots 96", strings.ReplaceAll(nearRack, "§", "")),
		elsewhere: "at the reading that it asks about"},
	"speed-sound": {plan: rackOf(measured, "voice OTTO\n"+twoSubjects, ", shoots 96",
		strings.Replace(strings.ReplaceAll(nearRack, "§", ""), "  pause 1 s\n", "  pause 1 s\n  §OTTO: \"Ring it again.\"\n", 1))},
	"slips": {plan: rackOf(measured+"  ends slip\n", "subject FAR at 3 m\n", "", strings.ReplaceAll(nearRack, "NEAR", "inf"))},
	"by-wire": {plan: rackOf("  closest 45 cm\n  ring by wire\n", twoSubjects, "", nearRack),
		elsewhere: "at the rack that it concerns"},
	"foreign-lens": {plan: `{"protocol":{"name":"OpenTrackIO","version":[1,0,1]},"static":{"lens":{"nominalFocalLength":75}},"lens":{"fStop":1.8}}` + "\n"},
	"foreign-unit": {plan: strings.Repeat(`{"protocol":{"name":"OpenTrackIO","version":[1,0,1]},"lens":{"fStop":2.8}}`+"\n", 811) +
		`{"lens":{"focusDistance":§-1}}` + "\n"},
	"foreign-scatter": {plan: `{"protocol":{"name":"OpenTrackIO","version":[1,0,1]},"static":{"lens":{"nominalFocalLength":75}},"lens":{"fStop":1.8,"encoders":{"focus":0.31},"focusDistance":2.41}}` + "\n" +
		`{"lens":{"fStop":1.8,"encoders":{"focus":0.31},"focusDistance":2.46}}` + "\n" +
		`{"lens":{"fStop":1.8,"encoders":{"focus":0.31},"focusDistance":2.52}}` + "\n" +
		`{"lens":{"fStop":1.8,"encoders":{"focus":0.9},"focusDistance":0.8}}` + "\n"},
	"outside-travel": {plan: "units imperial\n" + rackOf("  closest 18 in\n  ring 300 deg, diameter 110 mm\n", "subject FAR at 7'\nsubject NEAR at 1'9\"\n",
		", travel 330 deg from 2' to 8', wheel 80 mm", nearRack)},
}

// An errorRow is a row of the table.
type errorRow struct{ code, severity, where, message, detail string }

func errorRows(t *testing.T) (keys []string, rows map[string]errorRow) {
	text, err := os.ReadFile("../../testdata/lens-errors.tsv")
	if err != nil {
		t.Fatal(err)
	}
	rows = map[string]errorRow{}
	for line := range strings.Lines(string(text)) {
		c := strings.Split(strings.TrimRight(line, "\n"), "\t")
		if c[0] == "code" {
			continue
		}
		key := c[0]
		for n := 2; slices.Contains(keys, key); n++ {
			key = fmt.Sprintf("%s %d", c[0], n)
		}
		keys = append(keys, key)
		rows[key] = errorRow{c[0], c[1], c[2], c[3], c[4]}
	}
	return keys, rows
}

func TestLensErrors(t *testing.T) {
	keys, rows := errorRows(t)
	if len(keys) != 36 || len(keys) != len(errorCases) {
		t.Errorf("%d rows and %d plans", len(keys), len(errorCases))
	}
	for _, key := range keys {
		t.Run(strings.ReplaceAll(key, " ", "-"), func(t *testing.T) {
			c, ok := errorCases[key]
			if !ok {
				t.Fatal("it has no plan")
			}
			if wrong := c.differs(t, rows[key]); wrong != "" {
				t.Error(wrong)
			}
		})
	}
}

// differs returns how what is told of the case differs from the row, "" if it does not.
func (c *errorCase) differs(t *testing.T, row errorRow) string {
	before, after, marked := strings.Cut(c.plan, "§")
	source := before + after
	line := strings.Count(before, "\n") + 1
	column := len([]rune(before[strings.LastIndex(before, "\n")+1:])) + 1
	list := c.told(t, source)
	if c.detail != "" {
		row.detail = c.detail
	}
	if row.severity == "" {
		t.Fatal("the row has no severity")
	}
	for _, got := range list {
		if got.code != row.code {
			continue
		}
		switch {
		case got.severity != row.severity:
			return fmt.Sprintf("it is a %s, want a %s", got.severity, row.severity)
		case marked && (got.line != line || got.column != column):
			return fmt.Sprintf("it stands at %d:%d, want %d:%d (%s; %s)", got.line, got.column, line, column, row.where, c.elsewhere)
		case !c.alike(got.message, row.message):
			return fmt.Sprintf("it says\n%s\nwant\n%s", got.message, row.message)
		case row.detail != "" && !c.alike(got.detail, row.detail):
			return fmt.Sprintf("its detail is\n%s\nwant\n%s", got.detail, row.detail)
		}
		return ""
	}
	return fmt.Sprintf("it is not told; told is %+v", list)
}

var figure = regexp.MustCompile(`(over )?[0-9]+(\.[0-9]+)?(?: %)?`)

// alike reports whether a text is that of the row: to the letter, or but for its figures.
// "..." in the row stands for a figure.
func (c *errorCase) alike(got, want string) bool {
	if !c.looks {
		return got == want
	}
	bare := func(text string) string {
		return strings.ReplaceAll(figure.ReplaceAllString(text, "N"), "...", "N")
	}
	return bare(got) == bare(want)
}

// A toldFinding is what the program tells.
type toldFinding struct {
	code, severity, message, detail string
	line, column                    int
}

// told runs check over a plan, or lens --from over another program's file.
func (c *errorCase) told(t *testing.T, source string) (list []toldFinding) {
	folder := t.TempDir()
	var out, errs bytes.Buffer
	if strings.HasPrefix(source, "{") {
		path := filepath.Join(folder, "take.jsonl")
		save(t, path, source)
		run([]string{"lens", "--from", path}, strings.NewReader(""), &out, &errs)
		pattern := regexp.MustCompile(`(?m)^\S*:(\d+):(\d+): (\w+): (.*) \[([a-z-]+)\]$`)
		for _, m := range pattern.FindAllStringSubmatch(errs.String(), -1) {
			f := toldFinding{code: m[5], severity: m[3], message: m[4]}
			fmt.Sscan(m[1], &f.line)
			fmt.Sscan(m[2], &f.column)
			list = append(list, f)
		}
		return list
	}
	path := filepath.Join(folder, "row.pull")
	save(t, path, source)
	run([]string{"check", "--as", "json", path}, strings.NewReader(""), &out, &errs)
	var read struct {
		Findings []struct {
			Code, Severity, Message, Detail string
			Line, Column                    int
		}
	}
	if err := json.Unmarshal(out.Bytes(), &read); err != nil {
		t.Fatalf("%v in\n%s%s", err, &out, &errs)
	}
	for _, f := range read.Findings {
		list = append(list, toldFinding{f.Code, f.Severity, f.Message, f.Detail, f.Line, f.Column})
	}
	return list
}

func save(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}
