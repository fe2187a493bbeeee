// What the client can do and wants.

package editor

import (
	"encoding/json"
	"slices"

	"pullscore/cmd/internal/lsp"
)

// Settings of one session; they never change.
type settings struct {
	encoding encoding
	client   lsp.ClientCapabilities
	choices
	pulls bool     // the client asks for findings, and is not sent them
	roots []string // the folders of the workspace
}

// Choices are what a person has set, in initializationOptions or by
// workspace/didChangeConfiguration.
type choices struct {
	Hints       string `json:"hints"`       // all, pulls or none
	Units       string `json:"units"`       // plan, metric or imperial
	Diagnostics string `json:"diagnostics"` // push or pull
}

// chosen returns the choices after those of a client. Values that are not known change
// nothing. Clients send them alone, or as the section "pullscore" of all settings.
func (c choices) chosen(raw json.RawMessage) choices {
	var said struct {
		choices
		Pullscore choices `json:"pullscore"`
	}
	if json.Unmarshal(raw, &said) != nil {
		return c
	}
	for _, s := range []choices{said.choices, said.Pullscore} {
		take(&c.Hints, s.Hints, "all", "pulls", "none")
		take(&c.Units, s.Units, "plan", "metric", "imperial")
		take(&c.Diagnostics, s.Diagnostics, "push", "pull")
	}
	return c
}

func take(to *string, said string, known ...string) {
	if slices.Contains(known, said) {
		*to = said
	}
}

// newSettings returns the settings after initialize.
func newSettings(p *lsp.InitializeParams) *settings {
	s := &settings{
		client:  p.Capabilities,
		choices: choices{Hints: "all", Units: "plan", Diagnostics: "push"}.chosen(p.InitializationOptions),
	}
	s.encoding = encoding(slices.Contains(p.Capabilities.General.PositionEncodings, "utf-8"))
	documents := p.Capabilities.TextDocument
	// A client that can do both would show every finding twice.
	s.pulls = documents.Diagnostic != nil && (documents.PublishDiagnostics == nil || s.Diagnostics == "pull")
	for _, f := range p.WorkspaceFolders {
		if path, ok := pathOf(f.URI); ok {
			s.roots = append(s.roots, path)
		}
	}
	if p.WorkspaceFolders == nil && p.RootURI != nil {
		if path, ok := pathOf(*p.RootURI); ok {
			s.roots = []string{path}
		}
	}
	return s
}
