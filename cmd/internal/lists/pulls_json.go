package lists

import (
	"io"

	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists/scenes"
	"pullscore/interp/coverage"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// A Listing is a plan with its findings, as JSON has them.
type Listing struct {
	*plan.Plan
	Scenes   []sceneListing     `json:"scenes,omitempty"` // in place of those of the plan
	Findings []findings.Finding `json:"findings"`
}

// A sceneListing is a scene with what its set-ups have of each word.
type sceneListing struct {
	*plan.Scene
	Coverage []coverage.Run `json:"coverage"`
}

// NewListing returns the listing of a plan.
func NewListing(p *plan.Plan, diags []lang.Diagnostic) Listing {
	l := Listing{Plan: p, Findings: findings.List(diags)}
	for i, sc := range p.Scenes {
		l.Scenes = append(l.Scenes, sceneListing{sc, coverage.Staged(p, i, false).Coverage})
	}
	return l
}

// WriteJSON writes the plan with its findings.
func WriteJSON(w io.Writer, p *plan.Plan, diags []lang.Diagnostic) error {
	return findings.Encode(w, NewListing(p, diags))
}

// Only returns the plan with nothing but the shot of that ID and what concerns
// it; ok is false where there is none.
func Only(p *plan.Plan, id string) (only *plan.Plan, ok bool) {
	c := *p
	c.Shots, c.Scenes, c.Defaults = nil, nil, []plan.Default{}
	for _, s := range p.Shots {
		if s.ID == id {
			s, c.Scenes = scenes.Alone(p, s)
			c.Shots = append(c.Shots, s)
		}
	}
	for _, d := range p.Defaults {
		if d.Shot == "" || d.Shot == id {
			c.Defaults = append(c.Defaults, d)
		}
	}
	return &c, len(c.Shots) > 0
}
