// SARIF: Static Analysis Results Interchange Format, OASIS standard, version
// 2.1.0 plus errata 01 (2023). Only what it requires and what we know.

package findings

import (
	"io"
	"net/url"
	"path/filepath"
	"slices"

	"pullscore/lang"
	"pullscore/lang/rule"
)

const (
	sarifVersion = "2.1.0"
	sarifSchema  = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool       sarifTool     `json:"tool"`
	ColumnKind string        `json:"columnKind"`
	Results    []sarifResult `json:"results"`
}

type sarifTool struct {
	Driver sarifDriver `json:"driver"`
}

type sarifDriver struct {
	Name  string      `json:"name"`
	Rules []sarifRule `json:"rules"`
}

type sarifRule struct {
	ID     string              `json:"id"`
	Short  *sarifMessage       `json:"shortDescription,omitempty"`
	Full   *sarifMessage       `json:"fullDescription,omitempty"`
	Config *sarifConfiguration `json:"defaultConfiguration,omitempty"`
}

type sarifConfiguration struct {
	Level string `json:"level"`
}

type sarifResult struct {
	RuleID    string          `json:"ruleId"`
	RuleIndex int             `json:"ruleIndex"`
	Level     string          `json:"level"`
	Message   sarifMessage    `json:"message"`
	Locations []sarifLocation `json:"locations"`
	Related   []sarifLocation `json:"relatedLocations,omitempty"`
	Fixes     []sarifFix      `json:"fixes,omitempty"`
}

type sarifMessage struct {
	Text string `json:"text"`
}

type sarifLocation struct {
	Physical sarifPhysical `json:"physicalLocation"`
	Message  *sarifMessage `json:"message,omitempty"`
}

type sarifPhysical struct {
	Artifact sarifArtifact `json:"artifactLocation"`
	Region   *sarifRegion  `json:"region,omitempty"`
}

type sarifArtifact struct {
	URI string `json:"uri"`
}

type sarifRegion struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndLine     int `json:"endLine"`
	EndColumn   int `json:"endColumn"`
}

// A sarifFix is a fix of the standard (3.55): the replacements of every file that it
// changes.
type sarifFix struct {
	Description sarifMessage  `json:"description"`
	Changes     []sarifChange `json:"artifactChanges"`
}

type sarifChange struct {
	Artifact     sarifArtifact      `json:"artifactLocation"`
	Replacements []sarifReplacement `json:"replacements"`
}

// A sarifReplacement (3.57) puts a text in place of a region; an empty region inserts.
type sarifReplacement struct {
	Deleted  sarifRegion   `json:"deletedRegion"`
	Inserted *sarifMessage `json:"insertedContent,omitempty"`
}

// WriteSARIF writes one run with all findings as its results.
func WriteSARIF(w io.Writer, diags []lang.Diagnostic) error {
	codes := []string{}
	for _, d := range diags {
		codes = append(codes, d.Code)
	}
	slices.Sort(codes)
	codes = slices.Compact(codes)
	run := sarifRun{
		Tool:       sarifTool{sarifDriver{Name: "pullscore", Rules: []sarifRule{}}},
		ColumnKind: "unicodeCodePoints",
		Results:    []sarifResult{},
	}
	for _, code := range codes {
		run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, sarifRuleOf(code))
	}
	for _, d := range diags {
		index, _ := slices.BinarySearch(codes, d.Code)
		run.Results = append(run.Results, sarifOf(d, index))
	}
	return Encode(w, sarifLog{sarifSchema, sarifVersion, []sarifRun{run}})
}

// sarifRuleOf returns the row of the table of findings for a code.
func sarifRuleOf(name string) sarifRule {
	code, ok := rule.Named(name)
	if !ok {
		return sarifRule{ID: name}
	}
	r := code.Rule()
	return sarifRule{
		ID: name, Short: &sarifMessage{r.Means + "."}, Full: &sarifMessage{r.Help}, Config: &sarifConfiguration{r.Severity.String()},
	}
}

// sarifOf returns a finding as a result; the levels of SARIF have our names.
func sarifOf(d lang.Diagnostic, index int) sarifResult {
	text := d.Message + "."
	if d.Detail != "" {
		text += " " + d.Detail
	}
	if c := cures(d); c != "" {
		text += " Cure: " + c + "."
	}
	r := sarifResult{
		RuleID: d.Code, RuleIndex: index, Level: d.Severity.String(), Message: sarifMessage{text},
		Locations: []sarifLocation{{Physical: physical(d.Range)}},
	}
	for _, rel := range d.Related {
		r.Related = append(r.Related, sarifLocation{physical(rel.Range), &sarifMessage{rel.Message}})
	}
	for _, c := range d.Cures {
		r.Fixes = append(r.Fixes, sarifFixOf("Write "+c.Says(), c.Edits)...)
	}
	for _, f := range d.Fixes {
		r.Fixes = append(r.Fixes, sarifFixOf(f.Title, f.Edits)...)
	}
	return r
}

// sarifFixOf returns the fix that makes edits; none where there are no edits.
func sarifFixOf(title string, edits []lang.Edit) []sarifFix {
	if len(edits) == 0 {
		return nil
	}
	f := sarifFix{Description: sarifMessage{title}}
	for _, e := range edits {
		artifact := sarifArtifact{uri(e.Range.File)}
		i := slices.IndexFunc(f.Changes, func(c sarifChange) bool { return c.Artifact == artifact })
		if i < 0 {
			i = len(f.Changes)
			f.Changes = append(f.Changes, sarifChange{Artifact: artifact})
		}
		r := sarifReplacement{Deleted: regionOf(e.Range)}
		if e.Text != "" {
			r.Inserted = &sarifMessage{e.Text}
		}
		f.Changes[i].Replacements = append(f.Changes[i].Replacements, r)
	}
	return []sarifFix{f}
}

func physical(r lang.Range) sarifPhysical {
	p := sarifPhysical{Artifact: sarifArtifact{uri(r.File)}}
	if r.Start.Line > 0 {
		region := regionOf(r)
		p.Region = &region
	}
	return p
}

func regionOf(r lang.Range) sarifRegion {
	return sarifRegion{r.Start.Line, r.Start.Column, r.End.Line, r.End.Column}
}

// uri returns a path as a URI reference (RFC 3986).
func uri(path string) string {
	u := url.URL{Path: filepath.ToSlash(path)}
	if filepath.IsAbs(path) {
		u.Scheme = "file"
	}
	return u.String()
}
