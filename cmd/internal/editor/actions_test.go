package editor

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// actionsAt returns the actions about a part of a document.
func actionsAt(t *testing.T, s *snapshot, uri string, within span, only ...string) []lsp.CodeAction {
	t.Helper()
	d, err := s.document(uri)
	if err != nil {
		t.Fatal(err)
	}
	p := &lsp.CodeActionParams{TextDocument: lsp.TextDocument{URI: uri}, Range: s.ranged(d, within.start, within.end), Context: lsp.CodeActionContext{Only: only}}
	result, err := codeActions(t.Context(), s, p)
	if err != nil {
		t.Fatal(err)
	}
	return result.([]lsp.CodeAction)
}

// after returns a snapshot in which an action has been done.
func done(t *testing.T, s *snapshot, action lsp.CodeAction) *snapshot {
	t.Helper()
	for uri, edits := range action.Edit.Changes {
		d, err := s.document(uri)
		if err != nil {
			t.Fatal(err)
		}
		changed := *d
		changed.text = newText(applied(d.data, edits, s.encoding), nil)
		s = s.with(&changed)
	}
	return s
}

// Every cure and fix of the plans of tests is an action at its finding; done, the finding
// is gone.
func TestQuickFixes(t *testing.T) {
	const most = 10 // of a plan: the edits themselves are tested where they are made
	cures, fixes := 0, 0
	for _, path := range plansOf(t, "examples", "interp/testdata/findings", "lang/testdata/errors") {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		uri := uriOf(path)
		s := held(map[string]string{uri: string(src)})
		p, err := s.plan(t.Context(), uri)
		if err != nil {
			t.Fatal(err)
		}
		asked := 0
		for _, d := range p.findings[p.document.real] {
			if len(d.Cures)+len(d.Fixes) == 0 || asked == most {
				continue
			}
			asked++
			list := actionsAt(t, s, uri, spanOf(d.Range), lsp.QuickFix)
			has := func(title string) int {
				return slices.IndexFunc(list, func(a lsp.CodeAction) bool { return a.Title == title })
			}
			for _, c := range d.Cures {
				title := (&actor{plan: p}).cureTitle(d, c)
				if at := has(title); at < 0 && len(c.Edits) > 0 {
					t.Errorf("%s:%d: no action for %q", path, d.Range.Start.Line, c.Text)
				} else if at >= 0 {
					cures++
					checkGone(t, p, done(t, s, list[at]), uri, d, list[at].Title)
				}
			}
			if len(d.Fixes) > 0 && len(d.Fixes[0].Edits) > 0 {
				at := has(d.Fixes[0].Title)
				if at < 0 || !list[at].IsPreferred {
					t.Errorf("%s:%d: no action for %q", path, d.Range.Start.Line, d.Fixes[0].Title)
					continue
				}
				fixes++
				checkGone(t, p, done(t, s, list[at]), uri, d, list[at].Title)
			}
		}
	}
	t.Logf("%d cures and %d fixes", cures, fixes)
	if cures < 10 {
		t.Errorf("only %d cures", cures)
	}
}

// checkGone reports a finding of which there are as many after an action as before: a line
// may have the same mistake twice.
func checkGone(t *testing.T, before *planned, s *snapshot, uri string, d lang.Diagnostic, title string) {
	t.Helper()
	after, err := s.plan(t.Context(), uri)
	if err != nil {
		t.Fatal(err)
	}
	count := func(p *planned) (n int) {
		for _, other := range p.result().Findings {
			if other.Code == d.Code && other.Message == d.Message && other.Range.Start.Line == d.Range.Start.Line && other.Shot == d.Shot && other.Pull == d.Pull {
				n++
			}
		}
		return n
	}
	if count(after) >= count(before) {
		t.Errorf("%s:%d: %s is there still after %q", uri, d.Range.Start.Line, d.Code, title)
	}
}

const opened = "plan \"A\"\nrate 24\nwatched on 8 m screen from 8 m\ncamera A\n  sensor 24.89 x 18.66 mm\n  records 3840 px\n  on tripod\nlens \"50\"\n  focal 50 mm\n  ring 270 deg, diameter 90 mm\n  closest 50 cm\n  stops f/2 to f/22\n" +
	"  turns left\nwith camera A, lens \"50\", stop f/8, meter f/8\nsubject OTTO at 2 m\nsubject BELL at 3 m\nshot 1\n  start on OTTO\n  OTTO: \"Ring the bell.\" # loud\n  pause 1 s\n  rack to BELL, because \"it rings\"\n  hold 1 s\n"

func TestWhatIsOpenIsWrittenOut(t *testing.T) {
	uri := "file:///nowhere/a.pull"
	s := held(map[string]string{uri: opened})
	d, _ := s.document(uri)
	list := actionsAt(t, s, uri, span{0, len(opened)}, lsp.RefactorRewrite)
	var titles []string
	for _, a := range list {
		titles = append(titles, a.Title)
	}
	if want := []string{"Write the times that are estimated", "Write the time that the rack takes"}; !slices.Equal(titles, want) {
		t.Fatalf("%q, not %q", titles, want)
	}
	before, err := s.plan(t.Context(), uri)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range list {
		s = done(t, s, a)
		if a.Title == titles[0] { // the other is of the text as it was
			list = actionsAt(t, s, uri, span{0, len(opened)}, lsp.RefactorRewrite)
			if len(list) != 1 {
				t.Fatalf("%+v", list)
			}
			s = done(t, s, list[0])
			break
		}
	}
	after, err := s.plan(t.Context(), uri)
	if err != nil {
		t.Fatal(err)
	}
	was, is := before.result().Plan.Shots[0], after.result().Plan.Shots[0]
	if is.Lines[0].Estimated || is.Pulls[0].Untimed {
		t.Error("something is open still")
	}
	if shift := float64(is.Pulls[0].Land - was.Pulls[0].Land); shift > 0.02 || shift < -0.02 {
		t.Errorf("the rack lands %v s later", shift)
	}
	if d.text == s.open[uri].text || !strings.Contains(string(s.open[uri].data), `"Ring the bell.", lasting`) {
		t.Errorf("%s", s.open[uri].data)
	}
}

func TestMoveIsMade(t *testing.T) {
	uri := "file:///nowhere/a.pull"
	s := held(map[string]string{uri: opened})
	from, to := strings.Index(opened, "pause"), strings.Index(opened, "hold 1 s")+len("hold 1 s")
	list := actionsAt(t, s, uri, span{from, to}, lsp.RefactorExtract)
	if len(list) != 1 {
		t.Fatalf("%+v", list)
	}
	text := string(done(t, s, list[0]).open[uri].data)
	if want := "move passage()\n  pause 1 s\n  rack to BELL, because \"it rings\"\n  hold 1 s\n\nshot 1\n"; !strings.Contains(text, want) || !strings.HasSuffix(text, "# loud\n  passage()\n") {
		t.Errorf("%s", text)
	}
	if list := actionsAt(t, s, uri, span{to - 3, to - 1}, lsp.RefactorExtract); len(list) != 0 {
		t.Errorf("a word is no passage: %+v", list)
	}
	if list := actionsAt(t, s, uri, span{strings.Index(opened, "start"), to}, lsp.RefactorExtract); len(list) != 0 {
		t.Errorf("a move cannot start a shot: %+v", list)
	}
}

func TestOnlyWantedActions(t *testing.T) {
	path, _ := example(t, "ticket-window.pull")
	s := held(map[string]string{uriOf(path): opened})
	for only, kinds := range map[string][]string{
		"refactor": {lsp.RefactorRewrite}, "source": nil, "quickfix": nil, "": {lsp.RefactorRewrite},
	} {
		var asked []string
		if only != "" {
			asked = []string{only}
		}
		var got []string
		for _, a := range actionsAt(t, s, uriOf(filepath.Join(filepath.Dir(path), "ticket-window.pull")), span{0, len(opened)}, asked...) {
			if !slices.Contains(got, a.Kind) && a.Kind != lsp.RefactorExtract {
				got = append(got, a.Kind)
			}
		}
		if !slices.Equal(got, kinds) {
			t.Errorf("%q: %q, not %q", only, got, kinds)
		}
	}
}

// A cure that changes a kit is offered only while no other plan uses the kit.
func TestACureLeavesOtherPlansAlone(t *testing.T) {
	folder := t.TempDir()
	const kit = "camera A\n  sensor 24.89 x 18.66 mm\n  records 3840 px\n  on hand\n" +
		"lens \"75\"\n  focal 75 mm\n  ring 270 deg, diameter 90 mm\n  closest 50 cm\n  stops f/1.4 to f/22\n  turns left\n"
	const src = "plan \"A\"\nrate 24\nuse \"kit.pull\"\nwatched on 8 m screen from 8 m\nwith camera A, lens \"75\", stop f/2.8, meter f/2.8\n" +
		"subject OTTO at 1 m, sways 1 mm\nshot 1\n  start on OTTO\n  hold 4 s\n"
	uri := uriOf(filepath.Join(folder, "a.pull"))
	texts := map[string]string{uri: src, uriOf(filepath.Join(folder, "kit.pull")): kit}
	elsewhere := func(s *snapshot) (n int) {
		for _, a := range actionsAt(t, s, uri, span{0, len(src)}, lsp.QuickFix) {
			for to := range a.Edit.Changes {
				if to != uri {
					n++
				}
			}
		}
		return n
	}
	alone := elsewhere(held(texts))
	texts[uriOf(filepath.Join(folder, "b.pull"))] = src
	if both := elsewhere(held(texts)); both != 0 {
		t.Errorf("%d cures write into a kit that another plan uses", both)
	}
	t.Logf("%d cure(s) write into the kit of one plan", alone)
	if alone == 0 {
		t.Error("no cure writes into the kit, so nothing is tested")
	}
}
