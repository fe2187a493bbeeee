// What a client shows over a whole document.

package lsp

import "encoding/json"

// Kinds of an InlayHint.
const (
	HintType = 1 + iota
	HintParameter
)

// An InlayHint is text that is shown within a line and is no part of it.
type InlayHint struct {
	Position     Position        `json:"position"`
	Label        string          `json:"label"`
	Kind         int             `json:"kind,omitempty"`
	TextEdits    []TextEdit      `json:"textEdits,omitempty"`
	Tooltip      *MarkupContent  `json:"tooltip,omitempty"`
	PaddingLeft  bool            `json:"paddingLeft,omitempty"`
	PaddingRight bool            `json:"paddingRight,omitempty"`
	Data         json.RawMessage `json:"data,omitempty"`
}

// Kinds of symbols.
const (
	SymbolFile = 1 + iota
	SymbolModule
	SymbolNamespace
	SymbolPackage
	SymbolClass
	SymbolMethod
	SymbolProperty
	SymbolField
	SymbolConstructor
	SymbolEnum
	SymbolInterface
	SymbolFunction
	SymbolVariable
	SymbolConstant
	SymbolString
	SymbolNumber
	SymbolBoolean
	SymbolArray
	SymbolObject
	SymbolKey
	SymbolNull
	SymbolEnumMember
	SymbolStruct
	SymbolEvent
	SymbolOperator
	SymbolTypeParameter
)

// A DocumentSymbol is a piece of a document, with the pieces in it.
type DocumentSymbol struct {
	Name           string           `json:"name"`
	Detail         string           `json:"detail,omitempty"`
	Kind           int              `json:"kind"`
	Range          Range            `json:"range"`
	SelectionRange Range            `json:"selectionRange"`
	Children       []DocumentSymbol `json:"children,omitempty"`
}

// A SymbolInformation is a piece of any document, or of one whose client knows no tree.
type SymbolInformation struct {
	Name          string   `json:"name"`
	Kind          int      `json:"kind"`
	ContainerName string   `json:"containerName,omitempty"`
	Location      Location `json:"location"`
}

// WorkspaceSymbolParams asks for pieces of all documents by their names.
type WorkspaceSymbolParams struct {
	Query string `json:"query"`
}

// Kinds of a FoldingRange.
const (
	FoldComment = "comment"
	FoldRegion  = "region"
)

// A FoldingRange is lines that can be folded away. The characters are nil at the end of
// a line.
type FoldingRange struct {
	StartLine      uint32  `json:"startLine"`
	StartCharacter *uint32 `json:"startCharacter,omitempty"`
	EndLine        uint32  `json:"endLine"`
	EndCharacter   *uint32 `json:"endCharacter,omitempty"`
	Kind           string  `json:"kind,omitempty"`
}

// SelectionRangeParams asks what to select around places.
type SelectionRangeParams struct {
	TextDocument TextDocument `json:"textDocument"`
	Positions    []Position   `json:"positions"`
}

// A SelectionRange is a part of a document, and what is around it.
type SelectionRange struct {
	Range  Range           `json:"range"`
	Parent *SelectionRange `json:"parent,omitempty"`
}

// FormattingParams asks for the edits that lay a document out. The options of the client
// are not read: there is one layout.
type FormattingParams struct {
	TextDocument TextDocument `json:"textDocument"`
}

// SemanticTokens says what every word is: five numbers for each, as the protocol
// describes.
type SemanticTokens struct {
	ResultID string   `json:"resultId,omitempty"`
	Data     []uint32 `json:"data"`
}

// A CodeLens is a command that is shown above a line.
type CodeLens struct {
	Range   Range           `json:"range"`
	Command *Command        `json:"command,omitempty"`
	Data    json.RawMessage `json:"data,omitempty"`
}

// A DocumentLink is a part of a document that leads to another.
type DocumentLink struct {
	Range   Range  `json:"range"`
	Target  string `json:"target,omitempty"`
	Tooltip string `json:"tooltip,omitempty"`
}
