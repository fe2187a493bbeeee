package lang

import (
	"testing"

	"golang.org/x/text/unicode/norm"
	"pgregory.net/rapid"
)

func TestWriteName(t *testing.T) {
	for name, want := range map[string]string{
		"NADIA": "NADIA", "JEAN-LUC": "JEAN-LUC", "O'BRIEN": "O'BRIEN", "R2-D2": "R2-D2", "T2": "T2", "名前": "名前",
		"MRS. DALE": `"MRS. DALE"`, "GUARD #2": `"GUARD #2"`, "mark": "mark", "over": `"over"`, "2ND MAN": `"2ND MAN"`, "A-10": `"A-10"`,
		"": `""`, `A "B"`: `"A \"B\""`, `A\`: `"A\\"`, "f/2": `"f/2"`, "A, B": `"A, B"`,
	} {
		if got := WriteName(name); got != want {
			t.Errorf("%q: %s, want %s", name, got, want)
		}
	}
}

// What is written is read back.
func TestWrittenIsRead(t *testing.T) {
	printable := rapid.StringOf(rapid.RuneFrom([]rune("aB é2\"\\'’”“#,.-:_/fT—名")))
	rapid.Check(t, func(t *rapid.T) {
		name, words := printable.Draw(t, "name"), printable.Draw(t, "words")
		if name == "" || words == "" {
			return
		}
		file, diags := Parse("f.pull", []byte("shot 1\n  "+WriteName(name)+": "+WriteText(words)+"\n"))
		if len(diags) > 0 {
			t.Fatalf("%s: %s: %v", WriteName(name), WriteText(words), diags)
		}
		speech, ok := file.Sections[0].Body[0].(*Speech)
		if !ok || speech.Who.Text != norm.NFC.String(name) || speech.Words.Value != words {
			t.Fatalf("%q: %q is read as %+v", name, words, file.Sections[0].Body[0])
		}
	})
}
