package editor

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pullscore/cmd/internal/lsp"
)

// folder writes files into a new folder and returns it, without links.
func folder(t testing.TB, texts map[string]string) string {
	t.Helper()
	dir, err := filepath.EvalSymlinks(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range texts {
		write(t, filepath.Join(dir, name), text)
	}
	return dir
}

func write(t testing.TB, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

const (
	kitText  = "subject OSKEL at 3 m\nsubject OSKEL at 4 m\n" // a name twice: told once, in the kit
	planText = "plan \"A scene\"\nuse \"kit.pull\"\n"
)

func has(code string) func(lsp.PublishDiagnosticsParams) bool {
	return func(p lsp.PublishDiagnosticsParams) bool {
		return slices.ContainsFunc(p.Diagnostics, func(d lsp.Diagnostic) bool { return d.Code == code })
	}
}

func hasNot(code string) func(lsp.PublishDiagnosticsParams) bool {
	return func(p lsp.PublishDiagnosticsParams) bool { return !has(code)(p) }
}

func TestKitIsToldOnce(t *testing.T) {
	t.Run("all held", func(t *testing.T) { kitIsToldOnce(t, Options{}) })
	t.Run("findings held", func(t *testing.T) { kitIsToldOnce(t, Options{maxHeld: 1}) })
}

func kitIsToldOnce(t *testing.T, o Options) {
	dir := folder(t, map[string]string{"kit.pull": kitText, "a.pull": planText, "b/b.pull": "plan \"B\"\nuse \"../kit.pull\"\nrate 3000\n", "c.pull": "rate 24\n"})
	c := newClientWith(t, o)
	c.hello(`{}`, dir)
	kit, a, b := uriOf(filepath.Join(dir, "kit.pull")), uriOf(filepath.Join(dir, "a.pull")), uriOf(filepath.Join(dir, "b/b.pull"))
	c.open(a, planText)
	p := c.list(kit, has("duplicate-name"))
	if n := strings.Count(fmt.Sprint(codes(p.Diagnostics)), "duplicate-name"); n != 1 || p.Version != nil {
		t.Errorf("the kit's finding is told %d times: %+v", n, p)
	}
	c.open(kit, kitText)
	c.list(kit, func(p lsp.PublishDiagnosticsParams) bool { return version(1)(p) && has("duplicate-name")(p) })
	c.list(b, func(p lsp.PublishDiagnosticsParams) bool { return len(p.Diagnostics) > 0 }) // it uses what is open
	c.change(kit, 2, "subject OSKEL at 3 m\n")
	c.list(kit, func(p lsp.PublishDiagnosticsParams) bool { return version(2)(p) && hasNot("duplicate-name")(p) })
	c.tell("textDocument/didClose", about(kit))
	c.list(kit, has("duplicate-name"))                                                      // the disk's text again
	c.list(b, func(p lsp.PublishDiagnosticsParams) bool { return len(p.Diagnostics) == 0 }) // it uses nothing that is open
	c.tell("textDocument/didClose", about(a))
	c.list(kit, func(p lsp.PublishDiagnosticsParams) bool { return len(p.Diagnostics) == 0 })
}

// A client that watches tells of files that change; for others the server looks when a
// file is saved.
func TestFilesChangeOnDisk(t *testing.T) {
	for _, watches := range []bool{false, true} {
		t.Run(fmt.Sprint("watches ", watches), func(t *testing.T) {
			dir := folder(t, map[string]string{"a.pull": planText})
			c := start(t, fmt.Sprintf(`{"workspace":{"didChangeWatchedFiles":{"dynamicRegistration":%v}}}`, watches), dir)
			a, kit := uriOf(filepath.Join(dir, "a.pull")), filepath.Join(dir, "kit.pull")
			c.open(a, planText)
			c.list(a, has("no-such-file"))
			changed := func(kind int) {
				if watches {
					c.tell("workspace/didChangeWatchedFiles", lsp.DidChangeWatchedFilesParams{Changes: []lsp.FileEvent{{URI: uriOf(kit), Type: kind}}})
				} else {
					c.tell("textDocument/didSave", about(a))
				}
			}
			write(t, kit, kitText)
			changed(lsp.FileCreated)
			c.list(a, hasNot("no-such-file"))
			c.list(uriOf(kit), has("duplicate-name"))
			write(t, kit, "subject OSKEL at 3 m\n")
			changed(lsp.FileChanged)
			c.list(uriOf(kit), hasNot("duplicate-name"))
			if err := os.Remove(kit); err != nil {
				t.Fatal(err)
			}
			changed(lsp.FileDeleted)
			c.list(a, has("no-such-file"))
		})
	}
}

// A file that is opened by a link is one file, told by the name that it was opened by.
func TestLinks(t *testing.T) {
	dir := folder(t, map[string]string{"kit.pull": "subject OSKEL at 3 m\n", "a.pull": planText})
	link := filepath.Join(dir, "linked.pull")
	if err := os.Symlink(filepath.Join(dir, "kit.pull"), link); err != nil {
		t.Skip(err)
	}
	c := start(t, `{}`, dir)
	a := uriOf(filepath.Join(dir, "a.pull"))
	c.open(a, planText)
	c.list(a, version(1))
	c.open(uriOf(link), kitText)
	c.list(uriOf(link), has("duplicate-name"))
	c.mu.Lock()
	if p := c.lists[uriOf(filepath.Join(dir, "kit.pull"))]; len(p.Diagnostics) > 0 {
		t.Errorf("told by two names: %+v", p)
	}
	c.mu.Unlock()
	s := held(map[string]string{a: planText, uriOf(link): kitText}, dir)
	if users := s.users(uriOf(link)); !slices.Equal(users, []string{filepath.Join(dir, "a.pull")}) {
		t.Errorf("it is used by %q", users)
	}
}

func TestTooManyPlans(t *testing.T) {
	dir := folder(t, map[string]string{"a.pull": planText, "b.pull": planText, "c/d.pull": planText})
	kit, a := uriOf(filepath.Join(dir, "kit.pull")), uriOf(filepath.Join(dir, "a.pull"))
	for most, want := range []int{0, 0, 0, 2} { // of those with kit.pull in their folder
		s := held(map[string]string{kit: kitText}, dir)
		s.shared.workspace.most = most
		if users := s.users(kit); len(users) != want {
			t.Errorf("of at most %d: %q", most, users)
		}
	}
	c := newClientWith(t, Options{maxPlans: 2})
	c.hello(`{}`, dir)
	c.open(a, planText)
	c.list(a, has("no-such-file"))
	c.change(a, 2, planText+"\n")
	c.list(a, version(2))
	c.mu.Lock()
	defer c.mu.Unlock()
	if len(c.shown) != 1 {
		t.Errorf("it is told so once: %q", c.shown)
	}
}

func TestWorkspaceFolders(t *testing.T) {
	dir := folder(t, map[string]string{"kits/kit.pull": kitText, "scenes/a.pull": "use \"../kits/kit.pull\"\n", ".hidden/b.pull": "use \"../kits/kit.pull\"\n"})
	kit, a := uriOf(filepath.Join(dir, "kits/kit.pull")), filepath.Join(dir, "scenes/a.pull")
	for roots, want := range map[string][]string{dir: {a}, filepath.Join(dir, "kits"): nil, "": nil} {
		s := held(map[string]string{kit: kitText})
		if roots != "" {
			s.roots = []string{roots}
		}
		if users := s.users(kit); !slices.Equal(users, want) {
			t.Errorf("%q: %q, not %q", roots, users, want)
		}
	}
	c := start(t, `{}`, filepath.Join(dir, "kits"))
	c.open(kit, kitText)
	c.list(kit, version(1))
	c.tell("workspace/didChangeWorkspaceFolders", map[string]any{"event": map[string]any{
		"added": []lsp.WorkspaceFolder{{URI: uriOf(filepath.Join(dir, "scenes")), Name: "scenes"}}, "removed": []lsp.WorkspaceFolder{},
	}})
	c.edit(kit, 2)
	c.list(kit, version(2))
}

func TestAskedDiagnostics(t *testing.T) {
	dir := folder(t, map[string]string{"kit.pull": kitText, "a.pull": planText})
	kit := uriOf(filepath.Join(dir, "kit.pull"))
	c := newClient(t)
	var hello lsp.InitializeResult
	c.ask("initialize", map[string]any{"capabilities": map[string]any{"textDocument": map[string]any{"diagnostic": struct{}{}}}, "workspaceFolders": []lsp.WorkspaceFolder{{URI: uriOf(dir), Name: "a"}}}, &hello)
	if hello.Capabilities.DiagnosticProvider == nil {
		t.Error("the client is not told that it can ask")
	}
	c.open(kit, kitText)
	var full lsp.FullDiagnosticReport
	c.ask("textDocument/diagnostic", lsp.DocumentDiagnosticParams{TextDocument: lsp.TextDocument{URI: kit}}, &full)
	if full.Kind != "full" || !slices.Contains(codes(full.Items), "2:duplicate-name") {
		t.Errorf("%+v", full)
	}
	var same lsp.UnchangedDiagnosticReport
	c.ask("textDocument/diagnostic", lsp.DocumentDiagnosticParams{TextDocument: lsp.TextDocument{URI: kit}, PreviousResultID: full.ResultID}, &same)
	if same.Kind != "unchanged" || same.ResultID != full.ResultID {
		t.Errorf("%+v", same)
	}
	c.change(kit, 2, "subject OSKEL at 3 m\n")
	c.ask("textDocument/diagnostic", lsp.DocumentDiagnosticParams{TextDocument: lsp.TextDocument{URI: kit}, PreviousResultID: full.ResultID}, &full)
	if full.Kind != "full" || slices.Contains(codes(full.Items), "2:duplicate-name") {
		t.Errorf("%+v", full)
	}
}
