package findings

import (
	"encoding/json"
	"io"

	"pullscore/interp/plan"
	"pullscore/lang"
)

// A Finding is a diagnostic as JSON has it. Columns count characters from 1;
// the end is the column after the last.
type Finding struct {
	Code     string `json:"code"`
	Severity string `json:"severity"`
	Message  string `json:"message"`
	Detail   string `json:"detail,omitempty"`
	Scene    string `json:"scene,omitempty"` // of one that concerns several set-ups of it
	Shot     string `json:"shot,omitempty"`
	Pull     int    `json:"pull,omitempty"`
	Cause    string `json:"cause,omitempty"` // the letter of its cause, within the shot
	place
	Figures map[string]plan.Number `json:"figures,omitempty"`
	Cures   []cure                 `json:"cures,omitempty"`
	Fixes   []fix                  `json:"fixes,omitempty"`
	Related []related              `json:"related,omitempty"`
}

type place struct {
	File      string `json:"file"`
	Line      int    `json:"line"`
	Column    int    `json:"column"`
	EndLine   int    `json:"end_line"`
	EndColumn int    `json:"end_column"`
}

type cure struct {
	Text  string      `json:"text"`
	Value plan.Number `json:"value,omitzero"`
	Unit  string      `json:"unit,omitempty"`
	Then  string      `json:"then,omitempty"`
	Edits []edit      `json:"edits,omitempty"`
}

// A fix mends a mistake; nobody has tried what the plan comes to with it.
type fix struct {
	Title string `json:"title"`
	Edits []edit `json:"edits"`
}

// An edit puts a text in place of what stands at a place.
type edit struct {
	place
	Text string `json:"text"`
}

func editsOf(list []lang.Edit) (edits []edit) {
	for _, e := range list {
		edits = append(edits, edit{placeOf(e.Range), e.Text})
	}
	return edits
}

type related struct {
	Message string `json:"message"`
	place
}

// List returns diagnostics as JSON has them; it is never nil.
func List(diags []lang.Diagnostic) []Finding {
	list := make([]Finding, 0, len(diags))
	for _, d := range diags {
		list = append(list, newFinding(d))
	}
	return list
}

func newFinding(d lang.Diagnostic) Finding {
	f := Finding{
		Code: d.Code, Severity: d.Severity.String(), Message: d.Message, Detail: d.Detail,
		Scene: d.Scene, Shot: d.Shot, Pull: d.Pull, Cause: d.Cause, place: placeOf(d.Range),
	}
	for _, fig := range d.Figures {
		value := plan.Number(fig.Value)
		if !value.Known() {
			continue
		}
		if f.Figures == nil {
			f.Figures = map[string]plan.Number{}
		}
		f.Figures[fig.Name] = value
	}
	for _, c := range d.Cures {
		f.Cures = append(f.Cures, cure{c.Text, plan.Number(c.Value), c.Unit, c.Then, editsOf(c.Edits)})
	}
	for _, x := range d.Fixes {
		f.Fixes = append(f.Fixes, fix{x.Title, editsOf(x.Edits)})
	}
	for _, r := range d.Related {
		f.Related = append(f.Related, related{r.Message, placeOf(r.Range)})
	}
	return f
}

func placeOf(r lang.Range) place {
	return place{r.File, r.Start.Line, r.Start.Column, r.End.Line, r.End.Column}
}

// A Cause is a group of findings of one cause as JSON has it.
type Cause struct {
	File     string `json:"file"`
	Shot     string `json:"shot"`
	Code     string `json:"code"`
	Severity string `json:"severity"`
	Findings int    `json:"findings"`       // how many
	Cure     string `json:"cure,omitempty"` // what mends most of them
	Mends    int    `json:"mends,omitempty"`
}

// CausesOf returns the causes of a shot of a plan file as JSON has them.
func CausesOf(file string, s *plan.Shot) []Cause {
	var list []Cause
	for _, c := range s.Causes {
		list = append(list, Cause{file, s.ID, c.Code, c.Severity, len(c.Flags), c.Cure, c.Mends})
	}
	return list
}

// WriteJSON writes { "findings": [...], "causes": [...] }, the second where
// findings have a cause in common.
func WriteJSON(w io.Writer, diags []lang.Diagnostic, causes []Cause) error {
	return Encode(w, struct {
		Findings []Finding `json:"findings"`
		Causes   []Cause   `json:"causes,omitempty"`
	}{List(diags), causes})
}

// Encode writes v as indented JSON with characters such as < as they are.
func Encode(w io.Writer, v any) error {
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}
