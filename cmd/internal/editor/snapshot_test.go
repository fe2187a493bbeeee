package editor

import (
	"strings"
	"testing"

	"pullscore/cmd/internal/lsp"
)

// held returns a snapshot of texts that are open, without a server.
func held(texts map[string]string, roots ...string) *snapshot {
	s := &snapshot{
		settings: newSettings(&lsp.InitializeParams{}),
		shared:   &shared{disk: newDisk(), plans: &plans{last: map[string]*flight{}}, workspace: &workspace{most: maxPlans, tooLarge: func() {}}},
		open:     map[string]*document{}, reals: map[string]*document{},
	}
	s.roots = roots
	for uri, text := range texts {
		s = s.with(s.newDocument(lsp.TextDocumentItem{URI: uri, Version: 1, Text: text}))
	}
	return s
}

func TestPlanOfUnsavedTexts(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	uri := uriOf(path)
	s := held(map[string]string{uri: src})
	p, err := s.plan(t.Context(), uri)
	if err != nil {
		t.Fatal(err)
	}
	if len(p.result().Plan.Shots) == 0 || len(p.tree().Sections) == 0 {
		t.Fatal("the plan has no shots")
	}
	again, err := s.plan(t.Context(), uri)
	if err != nil || again.reading != p.reading {
		t.Errorf("the plan was interpreted twice: %v", err)
	}
	shot := p.tree().Sections[0].Head.Range()
	at := p.location(shot)
	if at.URI != uri || s.offset(p.document, at.Range.Start) != shot.Start.Offset {
		t.Errorf("%+v is not where %+v is", at, shot)
	}
	kit, _ := example(t, "kit.pull")
	if users := s.users(uriOf(kit)); len(users) == 0 || !strings.HasSuffix(users[0], ".pull") {
		t.Errorf("nobody uses the kit: %q", users)
	}
}
