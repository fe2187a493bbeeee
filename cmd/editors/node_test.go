package editors

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pullscore/lang"
)

// TestNodeSession runs sessions with the server in a client for Node: one through all
// that the server offers, and one that asks for findings.
func TestNodeSession(t *testing.T) {
	packages := os.Getenv("PULLSCORE_LSP_NODE")
	if packages == "" {
		t.Skip("skipped: set PULLSCORE_LSP_NODE to a folder with the npm package vscode-languageserver-protocol")
	}
	packages, err := filepath.Abs(packages)
	if err != nil {
		t.Fatal(err)
	}
	plan := faultyPlan(t)
	laidOut := filepath.Join(t.TempDir(), "laid-out.pull")
	mended := strings.Replace(faulty, "1,2 s", "1.2 s", 1)
	if err := os.WriteFile(laidOut, lang.Format([]byte(mended)), 0o644); err != nil {
		t.Fatal(err)
	}
	// A session that waits for what never comes ends then; it takes a second.
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute)
	defer cancel()
	out, err := exec.CommandContext(ctx, "node", "testdata/session.mjs", packages, pullscore(t), plan, laidOut).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	for _, row := range []string{"findings", "places", "documentFormattingProvider", "definitionProvider", "referencesProvider", "documentHighlightProvider",
		"documentSymbolProvider", "workspaceSymbolProvider", "renameProvider", "foldingRangeProvider", "selectionRangeProvider", "documentLinkProvider",
		"hoverProvider", "inlayHintProvider", "codeActionProvider", "semanticTokensProvider", "codeLensProvider", "completionProvider", "signatureHelpProvider",
		"a staged plan", "a burst", "unsaved kit", "watched kit", "the end", "asked findings"} {
		if !strings.Contains("\n"+string(out), "\n"+row+"\n") {
			t.Errorf("no row %q in\n%s", row, out)
		}
	}
}
