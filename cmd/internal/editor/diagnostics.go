// Findings as the protocol has them, and the request for them.

package editor

import (
	"context"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"strings"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// source names the server beside every finding.
const source = "pullscore"

// diagnostic returns a finding of a plan.
func (s *snapshot) diagnostic(r *reading, d lang.Diagnostic) lsp.Diagnostic {
	out := lsp.Diagnostic{
		Range:    r.ranged(d.Range, s.encoding),
		Severity: lsp.SeverityError + int(lang.Error-d.Severity),
		Code:     d.Code,
		Source:   source,
		Message:  message(d),
		Data:     data(d),
	}
	if p := s.client.TextDocument.PublishDiagnostics; p == nil || p.RelatedInformation || s.pulls {
		for _, also := range d.Related {
			out.RelatedInformation = append(out.RelatedInformation, lsp.RelatedInformation{
				Location: lsp.Location{URI: s.uri(also.Range.File), Range: r.ranged(also.Range, s.encoding)},
				Message:  also.Message,
			})
		}
	}
	return out
}

// message returns the text of a finding: the message, below it the detail, below it what
// cures it.
func message(d lang.Diagnostic) string {
	lines := []string{d.Message}
	if d.Detail != "" {
		lines = append(lines, d.Detail)
	}
	var cures []string
	for _, c := range d.Cures {
		cures = append(cures, c.Says())
	}
	if cures != nil {
		lines = append(lines, "cure: "+strings.Join(cures, ", or "))
	}
	return strings.Join(lines, "\n")
}

// data returns the place and the figures of a finding, so that a client need not ask; nil
// if it has none.
func data(d lang.Diagnostic) json.RawMessage {
	if d.Shot == "" && len(d.Figures) == 0 {
		return nil
	}
	figures := map[string]float64{}
	for _, f := range d.Figures {
		figures[f.Name] = f.Value
	}
	out := struct {
		Shot    string             `json:"shot,omitempty"`
		Pull    int                `json:"pull,omitempty"`
		Time    *float64           `json:"time_s,omitempty"`
		Figures map[string]float64 `json:"figures,omitempty"`
	}{Shot: d.Shot, Pull: d.Pull, Figures: figures}
	if d.Shot != "" {
		out.Time = &d.Time
	}
	text, err := json.Marshal(out)
	if err != nil { // a figure that is no number
		return nil
	}
	return text
}

// documentDiagnostic answers with the findings in a document: those that are published.
func documentDiagnostic(ctx context.Context, s *snapshot, p *lsp.DocumentDiagnosticParams) (any, error) {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	var paths []string
	if d.plan {
		paths = append(paths, d.path)
	}
	var readings []*reading
	for _, path := range append(paths, s.users(d.uri)...) {
		r, err := s.shared.plans.get(ctx, s, path)
		if err != nil {
			return nil, err
		}
		readings = append(readings, r)
	}
	items := s.diagnostics(d.real, readings)
	text, err := json.Marshal(items)
	if err != nil {
		return nil, err
	}
	sum := fnv.New64a()
	sum.Write(text)
	id := fmt.Sprintf("%x", sum.Sum64())
	if id == p.PreviousResultID {
		return lsp.UnchangedDiagnosticReport{Kind: "unchanged", ResultID: id}, nil
	}
	return lsp.FullDiagnosticReport{Kind: "full", ResultID: id, Items: items}, nil
}
