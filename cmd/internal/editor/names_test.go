package editor

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pullscore/cmd/internal/lsp"
)

const kitForNames = `camera A
  sensor 24.89 x 18.66 mm
  on dolly
  iso 800
  shutter 180 deg
  monitor 7 in diagonal from 50 cm, 1920 px
lens "75"
  focal 75 mm
  stops f/1.8 to f/22
  closest 75 cm
  ring 310 deg, diameter 110 mm
move glance(who)
  cue seen on 1 s
  rack to who, on seen, over 1 s
move home()
  rack to DOOR, over 1 s
`

const planForNames = `plan "One 😀"
use "kit.pull"
subject NORA at 1.7 m
subject "MRS. DALE" at 2 m
subject DOOR at NORA + 10 cm
voice OTTO
let late = 1 s
shot 1 "Tea"
  with camera A, lens "75", stop f/8
  start on NORA
  NORA: "Nora says the kettle, 😀 the kettle, boils.", lasting 2 s
  rack to DOOR, landing on "boils", over 1 s
  glance("MRS. DALE")
  rack to NORA, on seen + 4 s + late, over 1 s
shot 2
  with camera A, lens "75", stop f/8
  start on NORA
  home()
`

const otherForNames = `plan "Two"
use "kit.pull"
subject DOOR at 3 m
subject NORA at 2 m
shot 1
  with camera A, lens "75", stop f/8
  start on NORA
  home()
`

// workspace writes files, and starts a server on their folder.
func workspaceOf(t *testing.T, capabilities string, texts map[string]string) (c *client, uri func(name string) string) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range texts {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return start(t, capabilities, dir), func(name string) string { return uriOf(filepath.Join(dir, name)) }
}

func threePlans(t *testing.T, capabilities string) (*client, func(string) string) {
	return workspaceOf(t, capabilities, map[string]string{"kit.pull": kitForNames, "one.pull": planForNames, "two.pull": otherForNames})
}

// on returns the place of the nth text on a line of a text, from 1, as UTF-16 counts.
func placeOf(text string, line int, word string) lsp.Position {
	at := strings.Split(text, "\n")[line-1]
	return lsp.Position{Line: uint32(line - 1), Character: uint32(width([]byte(at[:strings.Index(at, word)]), utf16))}
}

func at(uri string, p lsp.Position) lsp.PositionParams {
	return lsp.PositionParams{TextDocument: lsp.TextDocument{URI: uri}, Position: p}
}

// said writes places as file:line:text.
func saidPlaces(texts map[string]string, list []lsp.Location) string {
	var out []string
	for _, l := range list {
		name := l.URI[strings.LastIndex(l.URI, "/")+1:]
		x := newLineIndex([]byte(texts[name]))
		from, _ := x.offset(l.Range.Start, utf16)
		to, _ := x.offset(l.Range.End, utf16)
		out = append(out, fmt.Sprintf("%s:%d:%s", strings.TrimSuffix(name, ".pull"), l.Range.Start.Line+1, texts[name][from:to]))
	}
	return strings.Join(out, " ")
}

var textsForNames = map[string]string{"kit.pull": kitForNames, "one.pull": planForNames, "two.pull": otherForNames}

func TestDefinition(t *testing.T) {
	c, uri := threePlans(t, `{}`)
	for _, x := range []struct {
		file string
		line int
		word string
		want string
	}{
		{"one.pull", 12, "DOOR", "one:5:DOOR"},
		{"one.pull", 5, "NORA +", "one:3:NORA"},
		{"one.pull", 3, "NORA", "one:3:NORA"},
		{"one.pull", 9, "A,", "kit:1:A"},
		{"one.pull", 9, `75"`, `kit:7:"75"`},
		{"one.pull", 13, "glance", "kit:12:glance"},
		{"one.pull", 13, "DALE", `one:4:"MRS. DALE"`},
		{"one.pull", 12, "boils", "one:11:boils"},
		{"one.pull", 14, "seen", "kit:13:seen"},
		{"one.pull", 14, "late", "one:7:late"},
		{"one.pull", 11, "NORA", "one:3:NORA"},
		{"one.pull", 11, "says", ""},
		{"one.pull", 14, "over", ""},
		{"kit.pull", 14, "who", "kit:12:who"},
		{"kit.pull", 16, "DOOR", "one:5:DOOR two:3:DOOR"},
	} {
		var got []lsp.Location
		c.ask("textDocument/definition", at(uri(x.file), placeOf(textsForNames[x.file], x.line, x.word)), &got)
		if s := saidPlaces(textsForNames, got); s != x.want {
			t.Errorf("%s on line %d leads to %q, not %q", x.word, x.line, s, x.want)
		}
	}
}

func TestReferencesAndHighlights(t *testing.T) {
	c, uri := threePlans(t, `{}`)
	for _, x := range []struct {
		file        string
		line        int
		word        string
		declaration bool
		want, here  string
	}{
		{"one.pull", 12, "DOOR", true, "kit:16:DOOR one:5:DOOR one:12:DOOR two:3:DOOR", "5 w 12"},
		{"one.pull", 12, "DOOR", false, "kit:16:DOOR one:12:DOOR", "5 w 12"},
		{"kit.pull", 1, "A", true, "kit:1:A one:9:A one:16:A two:6:A", "1 w"},
		{"one.pull", 9, "A,", false, "one:9:A one:16:A two:6:A", "9 16"},
		{"one.pull", 3, "NORA", false, "one:5:NORA one:10:NORA one:11:NORA one:14:NORA one:17:NORA", "3 w 5 10 11 14 17"},
		{"one.pull", 11, "boils", true, `one:11:boils one:12:"boils"`, "11 w 12"},
		{"one.pull", 12, `boils"`, true, `one:11:boils one:12:"boils"`, "11 w 12"},
		{"one.pull", 11, "says", true, "", ""},
	} {
		place := placeOf(textsForNames[x.file], x.line, x.word)
		var got []lsp.Location
		c.ask("textDocument/references", lsp.ReferenceParams{TextDocument: lsp.TextDocument{URI: uri(x.file)}, Position: place, Context: lsp.ReferenceContext{IncludeDeclaration: x.declaration}}, &got)
		if s := saidPlaces(textsForNames, got); s != x.want {
			t.Errorf("%s on line %d stands at %q, not %q", x.word, x.line, s, x.want)
		}
		var lit []lsp.DocumentHighlight
		c.ask("textDocument/documentHighlight", at(uri(x.file), place), &lit)
		var here []string
		for _, h := range lit {
			here = append(here, fmt.Sprint(h.Range.Start.Line+1))
			if h.Kind == lsp.HighlightWrite {
				here = append(here, "w")
			}
		}
		if s := strings.Join(here, " "); s != x.here {
			t.Errorf("%s on line %d is lit at %q, not %q", x.word, x.line, s, x.here)
		}
	}
}

// changed returns the texts after the edits of a rename.
func changed(uri func(string) string, e lsp.WorkspaceEdit) map[string]string {
	out := maps.Clone(textsForNames)
	for name := range out {
		out[name] = string(applied([]byte(out[name]), e.Changes[uri(name)], utf16))
	}
	return out
}

func TestRename(t *testing.T) {
	c, uri := threePlans(t, `{}`)
	rename := func(file string, line int, word, name string) *lsp.Message {
		return c.answer("textDocument/rename", lsp.RenameParams{TextDocument: lsp.TextDocument{URI: uri(file)}, Position: placeOf(textsForNames[file], line, word), NewName: name})
	}
	for _, x := range []struct {
		file       string
		line       int
		word, name string
		pairs      []string // what becomes what, in all texts
	}{
		{"one.pull", 12, "DOOR", "GATE", []string{"DOOR", "GATE"}},
		{"one.pull", 12, "DOOR", "the gate", []string{"DOOR", `"the gate"`}},
		{"one.pull", 4, "DALE", "DALE", []string{`"MRS. DALE"`, "DALE"}},
		{"kit.pull", 7, "75", "long", []string{`lens "75"`, `lens long`}},
		{"one.pull", 13, "glance", "look", []string{"glance", "look"}},
		{"kit.pull", 12, "who", "whom", []string{"(who)", "(whom)", "to who", "to whom"}},
		{"kit.pull", 13, "seen", "there", []string{"seen", "there"}},
		{"two.pull", 6, "A,", `"over"`, []string{"camera A", `camera "over"`}},
		{"one.pull", 7, "late", "soon", []string{"late", "soon"}},
	} {
		m := rename(x.file, x.line, x.word, x.name)
		if m.Error != nil {
			t.Errorf("%s to %s: %v", x.word, x.name, m.Error)
			continue
		}
		var e lsp.WorkspaceEdit
		mustRead(t, m, &e)
		for name, got := range changed(uri, e) {
			if want := strings.NewReplacer(x.pairs...).Replace(textsForNames[name]); got != want {
				t.Errorf("%s to %s: %s is\n%s", x.word, x.name, name, got)
			}
		}
	}
	for _, x := range []struct {
		file             string
		line             int
		word, name, says string
	}{
		{"one.pull", 12, "DOOR", "over", "over is a word of the language"},
		{"one.pull", 12, "DOOR", "OTTO", "OTTO is already the name of a voice"},
		{"one.pull", 12, "DOOR", "otto", "OTTO and otto differ only in case"},
		{"one.pull", 12, "DOOR", "glance", "glance is already the name of a move"},
		{"one.pull", 12, "DOOR", " ", "a name has at least one letter"},
		{"one.pull", 12, "DOOR", "a\nb", "a name is on one line"},
		{"one.pull", 11, "kettle", "pot", "there is no name here that can change"},
		{"one.pull", 12, "boils", "sings", "there is no name here that can change"},
		{"one.pull", 8, "1", "2", "there is no name here that can change"},
		{"kit.pull", 13, "seen", "then there", "a name with blanks"},
		{"kit.pull", 12, "who", "seen", "would have a mistake on line"},
	} {
		if m := rename(x.file, x.line, x.word, x.name); m.Error == nil || !strings.Contains(m.Error.Message, x.says) {
			t.Errorf("%s to %q: %+v, not %q", x.word, x.name, m.Error, x.says)
		}
	}
}

// Only the case of a name may change too.
func TestRenameToAnotherCase(t *testing.T) {
	c, uri := threePlans(t, `{"workspace":{"workspaceEdit":{"documentChanges":true}}}`)
	c.open(uri("one.pull"), planForNames)
	var e lsp.WorkspaceEdit
	c.ask("textDocument/rename", lsp.RenameParams{TextDocument: lsp.TextDocument{URI: uri("one.pull")}, Position: placeOf(planForNames, 6, "OTTO"), NewName: "Otto"}, &e)
	if len(e.DocumentChanges) != 1 || e.DocumentChanges[0].TextDocument.Version == nil || *e.DocumentChanges[0].TextDocument.Version != 1 || len(e.DocumentChanges[0].Edits) != 1 {
		t.Errorf("%+v", e)
	}
}

func TestPrepareRename(t *testing.T) {
	c, uri := threePlans(t, `{"textDocument":{"rename":{"prepareSupport":true}}}`)
	for _, x := range []struct {
		line       int
		word, want string
	}{
		{4, "DALE", "MRS. DALE"}, {12, "DOOR", "DOOR"}, {9, `75"`, "75"}, {12, "boils", ""}, {11, "kettle", ""}, {8, "Tea", ""}, {8, "1", ""},
	} {
		m := c.answer("textDocument/prepareRename", at(uri("one.pull"), placeOf(planForNames, x.line, x.word)))
		if x.want == "" {
			if m.Error != nil || string(m.Result) != "null" {
				t.Errorf("%s: %s %v", x.word, m.Result, m.Error)
			}
			continue
		}
		var got lsp.PrepareRenameResult
		mustRead(t, m, &got)
		if s := saidPlaces(textsForNames, []lsp.Location{{URI: uri("one.pull"), Range: got.Range}}); got.Placeholder != x.want || s != fmt.Sprintf("one:%d:%s", x.line, x.want) {
			t.Errorf("%s: %s, %q", x.word, s, got.Placeholder)
		}
	}
}

func TestDocumentSymbols(t *testing.T) {
	c, uri := threePlans(t, `{"textDocument":{"documentSymbol":{"hierarchicalDocumentSymbolSupport":true}}}`)
	var tree []lsp.DocumentSymbol
	c.ask("textDocument/documentSymbol", about(uri("one.pull")), &tree)
	var got []string
	for _, x := range tree {
		got = append(got, fmt.Sprintf("%s (%s) %d-%d", x.Name, x.Detail, x.Range.Start.Line+1, x.Range.End.Line+1))
		for _, y := range x.Children {
			got = append(got, fmt.Sprintf("  %s (%s)", y.Name, y.Detail))
		}
	}
	want := []string{
		"NORA (subject) 3-3", "MRS. DALE (subject) 4-4", "DOOR (subject) 5-5", "OTTO (voice) 6-6", "late (let) 7-7",
		"1 (Tea) 8-14", "  NORA: Nora says the kettle, 😀 the kettle, boils. ()",
	}
	if len(got) < len(want) || !slices.Equal(got[:len(want)], want) {
		t.Errorf("%q", got)
	}
	for _, line := range got {
		if strings.HasPrefix(line, "  rack to DOOR") && !strings.Contains(line, " s, ") {
			t.Errorf("%q has no figures", line)
		}
	}
	plain, uri := threePlans(t, `{}`)
	var list []lsp.SymbolInformation
	plain.ask("textDocument/documentSymbol", about(uri("kit.pull")), &list)
	var names []string
	for _, x := range list {
		names = append(names, x.ContainerName+">"+x.Name)
	}
	if want := []string{">A", ">75", ">glance", "glance>seen", "glance>rack to who", ">home", "home>rack to DOOR"}; !slices.Equal(names, want) {
		t.Errorf("%q", names)
	}
}

func TestWorkspaceSymbols(t *testing.T) {
	c, _ := threePlans(t, `{}`)
	for query, want := range map[string]string{
		"door": "DOOR of One 😀, DOOR of Two", "glanse": "glance of kit.pull", "zzzzzz": "", "MRS": "MRS. DALE of One 😀", "late": "late of One 😀",
	} {
		var list []lsp.SymbolInformation
		c.ask("workspace/symbol", lsp.WorkspaceSymbolParams{Query: query}, &list)
		var got []string
		for _, x := range list {
			got = append(got, x.Name+" of "+x.ContainerName)
		}
		if s := strings.Join(got, ", "); s != want {
			t.Errorf("%s finds %q, not %q", query, s, want)
		}
	}
}

func mustRead(t *testing.T, m *lsp.Message, v any) {
	t.Helper()
	if m.Error != nil {
		t.Fatal(m.Error)
	}
	if err := json.Unmarshal(m.Result, v); err != nil {
		t.Fatal(err)
	}
}
