// What a client asks about a place, and what it is given.

package lsp

import "encoding/json"

// Kinds of MarkupContent.
const (
	PlainText = "plaintext"
	Markdown  = "markdown"
)

// MarkupContent is text for people.
type MarkupContent struct {
	Kind  string `json:"kind"`
	Value string `json:"value"`
}

// A Hover says what stands at a place.
type Hover struct {
	Contents MarkupContent `json:"contents"`
	Range    *Range        `json:"range,omitempty"`
}

// CompletionParams asks what can be written at a place.
type CompletionParams struct {
	TextDocument TextDocument       `json:"textDocument"`
	Position     Position           `json:"position"`
	Context      *CompletionContext `json:"context,omitempty"`
}

// CompletionContext says what started completion.
type CompletionContext struct {
	TriggerKind      int    `json:"triggerKind"`
	TriggerCharacter string `json:"triggerCharacter,omitempty"`
}

// A CompletionList is what can be written at a place, best first.
type CompletionList struct {
	IsIncomplete bool             `json:"isIncomplete"`
	Items        []CompletionItem `json:"items"`
}

// Kinds of a CompletionItem.
const (
	ItemText = 1 + iota
	ItemMethod
	ItemFunction
	ItemConstructor
	ItemField
	ItemVariable
	ItemClass
	ItemInterface
	ItemModule
	ItemProperty
	ItemUnit
	ItemValue
	ItemEnum
	ItemKeyword
	ItemSnippet
	ItemColor
	ItemFile
	ItemReference
	ItemFolder
	ItemEnumMember
	ItemConstant
	ItemStruct
	ItemEvent
	ItemOperator
	ItemTypeParameter
)

// Formats of the text of a CompletionItem.
const (
	InsertPlain = 1 + iota
	InsertSnippet
)

// A CompletionItem is one thing that can be written.
type CompletionItem struct {
	Label            string          `json:"label"`
	Kind             int             `json:"kind,omitempty"`
	Detail           string          `json:"detail,omitempty"`
	Documentation    *MarkupContent  `json:"documentation,omitempty"`
	Preselect        bool            `json:"preselect,omitempty"`
	SortText         string          `json:"sortText,omitempty"`
	FilterText       string          `json:"filterText,omitempty"`
	InsertTextFormat int             `json:"insertTextFormat,omitempty"`
	TextEdit         *TextEdit       `json:"textEdit,omitempty"`
	Command          *Command        `json:"command,omitempty"`
	Data             json.RawMessage `json:"data,omitempty"`
}

// SignatureHelp shows how a statement is written.
type SignatureHelp struct {
	Signatures      []SignatureInformation `json:"signatures"`
	ActiveSignature uint32                 `json:"activeSignature"`
	ActiveParameter *uint32                `json:"activeParameter,omitempty"`
}

// SignatureInformation is one way to write a statement.
type SignatureInformation struct {
	Label         string                 `json:"label"`
	Documentation *MarkupContent         `json:"documentation,omitempty"`
	Parameters    []ParameterInformation `json:"parameters,omitempty"`
}

// ParameterInformation is one clause of a statement. Label is where it stands in the
// label of the signature, from and up to, in UTF-16 code units.
type ParameterInformation struct {
	Label         [2]uint32      `json:"label"`
	Documentation *MarkupContent `json:"documentation,omitempty"`
}

// Kinds of a CodeAction.
const (
	QuickFix        = "quickfix"
	RefactorRewrite = "refactor.rewrite"
	RefactorExtract = "refactor.extract"
	SourceFixAll    = "source.fixAll"
)

// CodeActionParams asks what can be done about a part of a document.
type CodeActionParams struct {
	TextDocument TextDocument      `json:"textDocument"`
	Range        Range             `json:"range"`
	Context      CodeActionContext `json:"context"`
}

// CodeActionContext says which findings and which kinds of action are meant. Only is
// empty for all kinds.
type CodeActionContext struct {
	Diagnostics []Diagnostic `json:"diagnostics"`
	Only        []string     `json:"only,omitempty"`
	TriggerKind int          `json:"triggerKind,omitempty"`
}

// A CodeAction is something that can be done.
type CodeAction struct {
	Title       string          `json:"title"`
	Kind        string          `json:"kind,omitempty"`
	Diagnostics []Diagnostic    `json:"diagnostics,omitempty"`
	IsPreferred bool            `json:"isPreferred,omitempty"`
	Edit        *WorkspaceEdit  `json:"edit,omitempty"`
	Command     *Command        `json:"command,omitempty"`
	Data        json.RawMessage `json:"data,omitempty"`
}

// A Command is something that a client can ask the server to do.
type Command struct {
	Title     string `json:"title"`
	Command   string `json:"command"`
	Arguments []any  `json:"arguments,omitempty"`
}

// ReferenceParams asks for all places of a name.
type ReferenceParams struct {
	TextDocument TextDocument     `json:"textDocument"`
	Position     Position         `json:"position"`
	Context      ReferenceContext `json:"context"`
}

// ReferenceContext says whether the declaration is wanted too.
type ReferenceContext struct {
	IncludeDeclaration bool `json:"includeDeclaration"`
}

// Kinds of a DocumentHighlight.
const (
	HighlightText = 1 + iota
	HighlightRead
	HighlightWrite
)

// A DocumentHighlight is a place of a name in the same document.
type DocumentHighlight struct {
	Range Range `json:"range"`
	Kind  int   `json:"kind,omitempty"`
}

// RenameParams asks for the edits that give something another name.
type RenameParams struct {
	TextDocument TextDocument `json:"textDocument"`
	Position     Position     `json:"position"`
	NewName      string       `json:"newName"`
}

// PrepareRenameResult is the place of a name that can be changed.
type PrepareRenameResult struct {
	Range       Range  `json:"range"`
	Placeholder string `json:"placeholder"`
}
