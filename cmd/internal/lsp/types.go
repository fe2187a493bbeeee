// Places, texts and edits, as many requests share them. A field that a client may leave
// out is a pointer or the empty value; `omitempty` stands where the protocol has `?`.

package lsp

import "encoding/json"

// A Position is a place in a document: a line and a character, both from 0. A character
// is a byte or a UTF-16 code unit, as the two sides have agreed.
type Position struct {
	Line      uint32 `json:"line"`
	Character uint32 `json:"character"`
}

// A Range is a part of a document, from Start up to but not including End.
type Range struct {
	Start Position `json:"start"`
	End   Position `json:"end"`
}

// A Location is a part of a document anywhere.
type Location struct {
	URI   string `json:"uri"`
	Range Range  `json:"range"`
}

// A TextEdit replaces a part of a document.
type TextEdit struct {
	Range   Range  `json:"range"`
	NewText string `json:"newText"`
}

// A WorkspaceEdit is edits of several documents. Changes serves clients that do not know
// versions.
type WorkspaceEdit struct {
	Changes         map[string][]TextEdit `json:"changes,omitempty"`
	DocumentChanges []TextDocumentEdit    `json:"documentChanges,omitempty"`
}

// A TextDocumentEdit is edits of one version of a document.
type TextDocumentEdit struct {
	TextDocument VersionedTextDocument `json:"textDocument"`
	Edits        []TextEdit            `json:"edits"`
}

// A TextDocument names a document.
type TextDocument struct {
	URI string `json:"uri"`
}

// A VersionedTextDocument names a version of a document. Version is nil for one that is
// not open.
type VersionedTextDocument struct {
	URI     string `json:"uri"`
	Version *int32 `json:"version"`
}

// A TextDocumentItem is a document as it is opened.
type TextDocumentItem struct {
	URI        string `json:"uri"`
	LanguageID string `json:"languageId"`
	Version    int32  `json:"version"`
	Text       string `json:"text"`
}

// DidOpenParams tells that a document is open.
type DidOpenParams struct {
	TextDocument TextDocumentItem `json:"textDocument"`
}

// DidChangeParams tells the edits of a document, each on the text after the one before.
type DidChangeParams struct {
	TextDocument   VersionedTextDocument `json:"textDocument"`
	ContentChanges []ContentChange       `json:"contentChanges"`
}

// A ContentChange replaces a part of a document, or all of it if Range is nil.
type ContentChange struct {
	Range *Range `json:"range,omitempty"`
	Text  string `json:"text"`
}

// DocumentParams are those of requests about a whole document, and of didClose and
// didSave.
type DocumentParams struct {
	TextDocument TextDocument `json:"textDocument"`
}

// PositionParams are those of requests about a place.
type PositionParams struct {
	TextDocument TextDocument `json:"textDocument"`
	Position     Position     `json:"position"`
}

// RangeParams are those of requests about a part of a document.
type RangeParams struct {
	TextDocument TextDocument `json:"textDocument"`
	Range        Range        `json:"range"`
}

// Severities of a Diagnostic.
const (
	SeverityError = 1 + iota
	SeverityWarning
	SeverityInformation
	SeverityHint
)

// A Diagnostic is one finding.
type Diagnostic struct {
	Range              Range                `json:"range"`
	Severity           int                  `json:"severity,omitempty"`
	Code               string               `json:"code,omitempty"`
	Source             string               `json:"source,omitempty"`
	Message            string               `json:"message"`
	RelatedInformation []RelatedInformation `json:"relatedInformation,omitempty"`
	Data               json.RawMessage      `json:"data,omitempty"`
}

// RelatedInformation is another place that belongs to a Diagnostic.
type RelatedInformation struct {
	Location Location `json:"location"`
	Message  string   `json:"message"`
}

// PublishDiagnosticsParams holds all findings in a document. Version is nil for one that
// is not open.
type PublishDiagnosticsParams struct {
	URI         string       `json:"uri"`
	Version     *int32       `json:"version,omitempty"`
	Diagnostics []Diagnostic `json:"diagnostics"`
}

// DocumentDiagnosticParams asks for the findings in a document.
type DocumentDiagnosticParams struct {
	TextDocument     TextDocument `json:"textDocument"`
	PreviousResultID string       `json:"previousResultId,omitempty"`
}

// A FullDiagnosticReport answers with the findings. Kind is "full".
type FullDiagnosticReport struct {
	Kind     string       `json:"kind"`
	ResultID string       `json:"resultId,omitempty"`
	Items    []Diagnostic `json:"items"`
}

// An UnchangedDiagnosticReport says that the findings are those of ResultID. Kind is
// "unchanged".
type UnchangedDiagnosticReport struct {
	Kind     string `json:"kind"`
	ResultID string `json:"resultId"`
}
