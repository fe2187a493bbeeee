package findings

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/cmd/internal/console"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/lang/rule"
)

const source = "plan \"Ferry\"\nshot 1\n\track to ILKA, ower 1 s\n"

// at returns the range of a text in source.
func at(text string) lang.Range {
	pos := func(offset int) lang.Pos {
		before := source[:offset]
		return lang.Pos{
			Offset: offset, Line: 1 + strings.Count(before, "\n"),
			Column: offset - strings.LastIndex(before, "\n"),
		}
	}
	i := strings.Index(source, text)
	return lang.Range{File: "a b.pull", Start: pos(i), End: pos(i + len(text))}
}

func sample() lang.Diagnostic {
	return lang.Diagnostic{
		Code: "hard-to-land", Severity: lang.Warning, Message: "this <rack> is fast", Detail: "It needs more.",
		Range: at("ower"), Shot: "1", Pull: 2,
		Related: []lang.Related{{Message: "in the move used here", Range: at("shot")}},
		Figures: []lang.Figure{{Name: "probability", Value: 0.81}, {Name: "far_m", Value: math.Inf(1)}, {Name: "none", Value: math.NaN()}},
		Cures: []lang.Cure{
			{Text: "over 1.9 s", Value: 1.9, Unit: "s", Edits: []lang.Edit{{Range: at("ower 1 s"), Text: "over 1.9 s"}, {Range: inKit, Text: "  on tripod\n"}}},
			{Text: "stop f/4", Value: 4},
		},
		Fixes: []lang.Fix{{Title: "Write over", Edits: []lang.Edit{{Range: at("ower"), Text: "over"}}}, {Title: "Delete it", Edits: []lang.Edit{{Range: at(", ower 1 s")}}}},
	}
}

// inKit is a place in another file, where something is inserted.
var inKit = lang.Range{File: "kit.pull", Start: lang.Pos{Offset: 9, Line: 2, Column: 1}, End: lang.Pos{Offset: 9, Line: 2, Column: 1}}

func TestText(t *testing.T) {
	var out bytes.Buffer
	p := Printer{console.Screen{W: &out, Width: 80}}
	if err := p.Print(sample(), []byte(source)); err != nil {
		t.Fatal(err)
	}
	want := "a b.pull:3:16: warning: this <rack> is fast [hard-to-land]\n" +
		"    3 | \track to ILKA, ower 1 s\n" +
		"      | \t              ^~~~\n" +
		"        It needs more.\n" +
		"        a b.pull:2:1: in the move used here\n" +
		"        cure: over 1.9 s, or stop f/4\n\n"
	if out.String() != want {
		t.Errorf("printed\n%swant\n%s", &out, want)
	}
}

func TestTextWithoutAPlace(t *testing.T) {
	var out bytes.Buffer
	d := lang.Diagnostic{Code: "x", Severity: lang.Error, Message: "nowhere", Range: lang.Range{File: "f.pull"}}
	if err := (Printer{console.Screen{W: &out, Width: 80}}).Print(d, nil); err != nil || out.String() != "f.pull:0:0: error: nowhere [x]\n\n" {
		t.Errorf("printed %q, error %v", &out, err)
	}
}

func TestTextTellsThatItCannotBeWritten(t *testing.T) {
	r, w := io.Pipe()
	full := errors.New("full")
	r.CloseWithError(full)
	if err := (Printer{console.Screen{W: w, Width: 80}}).Print(sample(), []byte(source)); !errors.Is(err, full) {
		t.Errorf("error %v", err)
	}
}

func TestJSON(t *testing.T) {
	var out bytes.Buffer
	if err := WriteJSON(&out, []lang.Diagnostic{sample()}, nil); err != nil {
		t.Fatal(err)
	}
	var compact bytes.Buffer
	if err := json.Compact(&compact, out.Bytes()); err != nil {
		t.Fatal(err)
	}
	want := `{"findings":[{"code":"hard-to-land","severity":"warning","message":"this <rack> is fast",` +
		`"detail":"It needs more.","shot":"1","pull":2,` +
		`"file":"a b.pull","line":3,"column":16,"end_line":3,"end_column":20,` +
		`"figures":{"far_m":null,"probability":0.81},` +
		`"cures":[{"text":"over 1.9 s","value":1.9,"unit":"s","edits":[` +
		`{"file":"a b.pull","line":3,"column":16,"end_line":3,"end_column":24,"text":"over 1.9 s"},` +
		`{"file":"kit.pull","line":2,"column":1,"end_line":2,"end_column":1,"text":"  on tripod\n"}]},{"text":"stop f/4","value":4}],` +
		`"fixes":[{"title":"Write over","edits":[{"file":"a b.pull","line":3,"column":16,"end_line":3,"end_column":20,"text":"over"}]},` +
		`{"title":"Delete it","edits":[{"file":"a b.pull","line":3,"column":14,"end_line":3,"end_column":24,"text":""}]}],` +
		`"related":[{"message":"in the move used here","file":"a b.pull","line":2,"column":1,"end_line":2,"end_column":5}]}]}`
	if compact.String() != want {
		t.Errorf("got  %s\nwant %s", &compact, want)
	}
}

// What the standard requires of a log: SARIF 2.1.0 (OASIS, 2020), sections
// 3.13 sarifLog, 3.14 run, 3.18 tool, 3.19 driver, 3.27 result, 3.30 region.
func TestSARIFHoldsWhatTheStandardRequires(t *testing.T) {
	var out bytes.Buffer
	err := WriteSARIF(&out, []lang.Diagnostic{sample(), {Code: "bad", Severity: lang.Error, Message: "no place", Range: lang.Range{File: "/x/ü.pull"}}})
	if err != nil {
		t.Fatal(err)
	}
	var log struct {
		Version string
		Runs    []struct {
			Tool struct {
				Driver struct {
					Name  string
					Rules []struct{ ID string }
				}
			}
			ColumnKind string
			Results    []struct {
				RuleID    string
				RuleIndex int
				Level     string
				Message   struct{ Text string }
				Locations []struct {
					PhysicalLocation struct {
						ArtifactLocation struct{ URI string }
						Region           *struct{ StartLine, StartColumn, EndLine, EndColumn int }
					}
				}
			}
		}
	}
	if err := json.Unmarshal(out.Bytes(), &log); err != nil {
		t.Fatal(err)
	}
	if log.Version != "2.1.0" || len(log.Runs) != 1 {
		t.Fatalf("version %q with %d runs", log.Version, len(log.Runs))
	}
	run := log.Runs[0]
	if run.Tool.Driver.Name == "" || run.ColumnKind != "unicodeCodePoints" || len(run.Results) != 2 {
		t.Errorf("run: %+v", run)
	}
	levels := map[string]bool{"none": true, "note": true, "warning": true, "error": true} // 3.27.10
	for _, r := range run.Results {
		if !levels[r.Level] || r.Message.Text == "" || run.Tool.Driver.Rules[r.RuleIndex].ID != r.RuleID {
			t.Errorf("result: %+v", r)
		}
	}
	first, second := run.Results[0].Locations[0].PhysicalLocation, run.Results[1].Locations[0].PhysicalLocation
	if first.ArtifactLocation.URI != "a%20b.pull" || second.ArtifactLocation.URI != "file:///x/%C3%BC.pull" {
		t.Errorf("URIs %q and %q", first.ArtifactLocation.URI, second.ArtifactLocation.URI)
	}
	if first.Region == nil || first.Region.StartLine != 3 || first.Region.EndColumn != 20 || second.Region != nil {
		t.Errorf("regions %+v and %+v", first.Region, second.Region)
	}
	if text := run.Results[0].Message.Text; text != "this <rack> is fast. It needs more. Cure: over 1.9 s, or stop f/4." {
		t.Errorf("text %q", text)
	}
}

// What the standard requires of fixes: section 3.55 fix (artifactChanges, one or more),
// 3.56 artifactChange (artifactLocation, replacements, one or more), 3.57 replacement
// (deletedRegion; an empty one inserts), 3.3 artifactContent (text).
func TestSARIFHasFixes(t *testing.T) {
	var out bytes.Buffer
	if err := WriteSARIF(&out, []lang.Diagnostic{sample(), {Code: "bad", Severity: lang.Error, Message: "no fix", Range: at("shot")}}); err != nil {
		t.Fatal(err)
	}
	var log struct {
		Runs []struct {
			Results []struct{ Fixes json.RawMessage }
		}
	}
	if err := json.Unmarshal(out.Bytes(), &log); err != nil {
		t.Fatal(err)
	}
	var compact bytes.Buffer
	if err := json.Compact(&compact, log.Runs[0].Results[0].Fixes); err != nil {
		t.Fatal(err)
	}
	region := func(line, column, end int) string {
		return fmt.Sprintf(`"deletedRegion":{"startLine":%d,"startColumn":%d,"endLine":%d,"endColumn":%d}`, line, column, line, end)
	}
	want := `[{"description":{"text":"Write over 1.9 s"},"artifactChanges":[` +
		`{"artifactLocation":{"uri":"a%20b.pull"},"replacements":[{` + region(3, 16, 24) + `,"insertedContent":{"text":"over 1.9 s"}}]},` +
		`{"artifactLocation":{"uri":"kit.pull"},"replacements":[{` + region(2, 1, 1) + `,"insertedContent":{"text":"  on tripod\n"}}]}]},` +
		`{"description":{"text":"Write over"},"artifactChanges":[{"artifactLocation":{"uri":"a%20b.pull"},"replacements":[{` + region(3, 16, 20) + `,"insertedContent":{"text":"over"}}]}]},` +
		`{"description":{"text":"Delete it"},"artifactChanges":[{"artifactLocation":{"uri":"a%20b.pull"},"replacements":[{` + region(3, 14, 24) + `}]}]}]`
	if compact.String() != want {
		t.Errorf("got  %s\nwant %s", &compact, want)
	}
	if fixes := log.Runs[0].Results[1].Fixes; fixes != nil {
		t.Errorf("a finding without fixes has %s", fixes)
	}
}

func TestEmptyListsAreLists(t *testing.T) {
	var j, s bytes.Buffer
	if err := errors.Join(WriteJSON(&j, nil, nil), WriteSARIF(&s, nil)); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(j.String()+s.String(), "null") {
		t.Errorf("null in %s%s", &j, &s)
	}
}

// Whatever stands in a finding, text stays free of commands to a terminal, and
// JSON can be read.
func TestAnythingCanBeWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		any := func(name string) string { return string(rapid.SliceOfN(rapid.Byte(), 0, 30).Draw(t, name)) }
		src := []byte(any("source"))
		start := rapid.IntRange(0, len(src)).Draw(t, "start")
		d := lang.Diagnostic{
			Code: "some-code", Message: any("message"), Detail: any("detail"),
			Severity: lang.Severity(rapid.IntRange(0, 2).Draw(t, "severity")),
			Range: lang.Range{File: any("file"), Start: lang.Pos{Offset: start, Line: 1, Column: 1},
				End: lang.Pos{Offset: rapid.IntRange(start, len(src)).Draw(t, "end"), Line: 1, Column: 2}},
			Figures: []lang.Figure{{Name: any("figure"), Value: rapid.Float64().Draw(t, "value")}},
			Cures:   []lang.Cure{{Text: any("cure"), Value: math.NaN()}},
		}
		var text, js, sarif bytes.Buffer
		if err := errors.Join((Printer{console.Screen{W: &text, Width: 80}}).Print(d, src), WriteJSON(&js, []lang.Diagnostic{d}, nil), WriteSARIF(&sarif, []lang.Diagnostic{d})); err != nil {
			t.Fatal(err)
		}
		if strings.ContainsAny(text.String(), "\x1b\x07\u009b\x00") {
			t.Fatalf("a command to the terminal in %q", &text)
		}
		if !json.Valid(js.Bytes()) || !json.Valid(sarif.Bytes()) {
			t.Fatalf("no JSON: %s %s", &js, &sarif)
		}
	})
}

func TestCount(t *testing.T) {
	for want, c := range map[string]Count{
		"no findings in 1 plan file":                  {Files: 1},
		"1 error, 2 warnings, 1 note in 3 plan files": {1, 2, 1, 3},
		"2 notes in 0 plan files":                     {Notes: 2},
	} {
		if got := c.String(); got != want {
			t.Errorf("%+v: %q, want %q", c, got, want)
		}
	}
}

// A rule of SARIF (section 3.49 reportingDescriptor) has the row of the table of
// findings: what it means, what to do, and its usual level.
func TestSARIFRulesComeFromTheTable(t *testing.T) {
	for code := range rule.All() {
		got := sarifRuleOf(code.String())
		want := code.Rule()
		if got.Short == nil || got.Short.Text != want.Means+"." || got.Full.Text != want.Help || got.Config.Level != want.Severity.String() {
			t.Errorf("%s: %+v", code, got)
		}
	}
}

// Findings of one cause are told once, with each of their places below.
func TestGroups(t *testing.T) {
	p := &plan.Plan{File: "a.pull", Shots: []*plan.Shot{{ID: "1", Causes: []plan.Cause{
		{Code: "hard-to-land", Severity: "warning", Flags: []int{1, 2, 4}, Cure: "stop f/4", Mends: 2},
		{Code: "re-grip", Severity: "note", Flags: []int{3, 5}},
	}}}}
	var diags []lang.Diagnostic
	for i, code := range []string{"hard-to-land", "hard-to-land", "re-grip", "hard-to-land", "re-grip"} {
		d := lang.Diagnostic{Code: code, Severity: lang.Warning, Shot: "1", Message: "rack " + string(rune('A'+i))}
		if code == "re-grip" {
			d.Severity = lang.Note
		}
		d.Range = lang.Range{File: "a.pull", Start: lang.Pos{Line: 10 + i, Column: 3}}
		diags = append(diags, d)
	}
	groups, rest := Grouped(p, diags)
	if len(groups) != 1 || len(groups[0].Diags) != 3 || len(rest) != 2 {
		t.Fatalf("%d groups, %d others", len(groups), len(rest))
	}
	if got := groups[0].Says(); got != "3 pulls do not land often enough in their time: stop f/4 mends 2 of them" {
		t.Errorf("says %q", got)
	}
	var out bytes.Buffer
	if err := (Printer{console.Screen{W: &out, Width: 80}}).PrintGroup(groups[0]); err != nil {
		t.Fatal(err)
	}
	const want = "a.pull: warning: shot 1: 3 pulls do not land often enough in their time: stop f/4 mends 2 of them [hard-to-land]\n" +
		"    10:3: rack A\n    11:3: rack B\n    13:3: rack D\n\n"
	if out.String() != want {
		t.Errorf("got\n%swant\n%s", &out, want)
	}
}
