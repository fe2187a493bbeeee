package editor

import (
	"encoding/json"
	"errors"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pullscore/cmd/internal/lsp"
)

// plansOf returns the plans in folders of the repository.
func plansOf(t testing.TB, folders ...string) (list []string) {
	t.Helper()
	for _, f := range folders {
		root, err := filepath.Abs(filepath.Join("..", "..", "..", filepath.FromSlash(f)))
		if err != nil {
			t.Fatal(err)
		}
		err = filepath.WalkDir(root, func(path string, e fs.DirEntry, err error) error {
			if err == nil && isPlan(path) {
				list = append(list, path)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return list
}

// anything returns parameters that suit every request: a place, a part, a new name.
func anything(uri string, a, b lsp.Position, word string) json.RawMessage {
	return raw(map[string]any{
		"textDocument": lsp.TextDocument{URI: uri},
		"position":     a, "positions": []lsp.Position{a, b}, "range": lsp.Range{Start: a, End: b},
		"context": map[string]any{"diagnostics": []int{}, "includeDeclaration": true, "triggerKind": 1},
		"newName": word, "query": word, "command": word, "options": map[string]any{"tabSize": 2, "insertSpaces": true},
	})
}

// answered sends every request to a snapshot: it answers or refuses, and never fails. A
// panic fails the test by itself.
func answered(t *testing.T, s *snapshot, uri string, a, b lsp.Position, word string) {
	t.Helper()
	params := anything(uri, a, b, word)
	for method, r := range requests() {
		if strings.HasPrefix(method, "test/") {
			continue
		}
		result, err := r.answer(t.Context(), s, params)
		var said *lsp.Error
		if err != nil {
			if !errors.As(err, &said) || said.Code == lsp.InternalError {
				t.Fatalf("%s at %+v to %+v: %v", method, a, b, err)
			}
			continue
		}
		text, err := json.Marshal(result)
		if err != nil {
			t.Fatal(err)
		}
		if err := strict(&lsp.Message{JSONRPC: "2.0", Result: text}, method); err != nil {
			t.Fatalf("at %+v to %+v: %v", a, b, err)
		}
	}
}

// TestAnyRequestAnywhere asks everything at places of all plans that tests have.
func TestAnyRequestAnywhere(t *testing.T) {
	const places = 1
	random := rand.New(rand.NewPCG(1, 2))
	plans := plansOf(t, "examples", "lang/testdata", "interp/testdata", "cmd/pullscore/starter")
	if len(plans) < 45 {
		t.Fatalf("only %d plans", len(plans))
	}
	disk := newDisk()
	for _, path := range plans {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		s := held(map[string]string{uriOf(path): string(src)}, filepath.Dir(path))
		s.settings.encoding = encoding(random.IntN(2) == 0)
		s.shared.disk = disk // each file is read once for all
		x := newLineIndex(src)
		for range places {
			at := []int{random.IntN(len(src) + 1), random.IntN(len(src) + 1)}
			slices.Sort(at)
			answered(t, s, uriOf(path), x.position(at[0], s.encoding), x.position(at[1], s.encoding), "OSKEL")
		}
	}
}

// FuzzRequests asks everything anywhere in any text.
func FuzzRequests(f *testing.F) {
	_, src := example(f, "ticket-window.pull")
	f.Add(src, uint16(3), uint16(4), uint16(9), uint16(0), "OSKEL", false)
	f.Add("plan \"\u00e9\U0001F600\"\r\nrack to", uint16(1), uint16(99), uint16(0), uint16(0), "\"", true)
	f.Fuzz(func(t *testing.T, text string, line, char, endLine, endChar uint16, word string, eight bool) {
		if len(text) > 4<<10 {
			t.Skip() // long texts are the work of the parser's own fuzzing
		}
		s := held(map[string]string{nowhere: text})
		s.settings.encoding = encoding(eight)
		answered(t, s, nowhere, lsp.Position{Line: uint32(line), Character: uint32(char)}, lsp.Position{Line: uint32(endLine), Character: uint32(endChar)}, word)
	})
}
