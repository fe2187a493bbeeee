// What both sides say of themselves at the start, and what they tell each other later.

package lsp

import "encoding/json"

// InitializeParams is what a client says first.
type InitializeParams struct {
	RootURI               *string            `json:"rootUri"`
	Capabilities          ClientCapabilities `json:"capabilities"`
	InitializationOptions json.RawMessage    `json:"initializationOptions,omitempty"`
	WorkspaceFolders      []WorkspaceFolder  `json:"workspaceFolders,omitempty"`
}

// A WorkspaceFolder is a folder that a client works in.
type WorkspaceFolder struct {
	URI  string `json:"uri"`
	Name string `json:"name"`
}

// ClientCapabilities is what a client can do, as far as Pullscore asks.
type ClientCapabilities struct {
	General struct {
		PositionEncodings []string `json:"positionEncodings"`
	} `json:"general"`
	Workspace struct {
		ApplyEdit             bool                `json:"applyEdit"`
		Configuration         bool                `json:"configuration"`
		WorkspaceFolders      bool                `json:"workspaceFolders"`
		DidChangeWatchedFiles DynamicRegistration `json:"didChangeWatchedFiles"`
		WorkspaceEdit         struct {
			DocumentChanges bool `json:"documentChanges"`
		} `json:"workspaceEdit"`
		Diagnostics    Refresh `json:"diagnostics"`
		InlayHint      Refresh `json:"inlayHint"`
		CodeLens       Refresh `json:"codeLens"`
		SemanticTokens Refresh `json:"semanticTokens"`
	} `json:"workspace"`
	TextDocument TextDocumentCapabilities `json:"textDocument"`
	Window       struct {
		ShowDocument struct {
			Support bool `json:"support"`
		} `json:"showDocument"`
	} `json:"window"`
	Experimental json.RawMessage `json:"experimental"` // anything
}

// TextDocumentCapabilities is what a client can do with a document.
type TextDocumentCapabilities struct {
	PublishDiagnostics *struct {
		RelatedInformation bool `json:"relatedInformation"`
	} `json:"publishDiagnostics"`
	Diagnostic *DynamicRegistration `json:"diagnostic"`
	Completion struct {
		CompletionItem struct {
			SnippetSupport      bool     `json:"snippetSupport"`
			DocumentationFormat []string `json:"documentationFormat"`
		} `json:"completionItem"`
	} `json:"completion"`
	Hover struct {
		ContentFormat []string `json:"contentFormat"`
	} `json:"hover"`
	CodeAction struct {
		DataSupport              bool      `json:"dataSupport"`
		CodeActionLiteralSupport *struct{} `json:"codeActionLiteralSupport"`
		ResolveSupport           struct {
			Properties []string `json:"properties"`
		} `json:"resolveSupport"`
	} `json:"codeAction"`
	DocumentSymbol struct {
		Hierarchical bool `json:"hierarchicalDocumentSymbolSupport"`
	} `json:"documentSymbol"`
	FoldingRange struct {
		LineFoldingOnly bool `json:"lineFoldingOnly"`
	} `json:"foldingRange"`
	Rename struct {
		PrepareSupport bool `json:"prepareSupport"`
	} `json:"rename"`
	InlayHint      DynamicRegistration `json:"inlayHint"`
	SemanticTokens struct {
		TokenTypes     []string `json:"tokenTypes"`
		TokenModifiers []string `json:"tokenModifiers"`
	} `json:"semanticTokens"`
}

// DynamicRegistration says whether a client lets itself be asked for more later.
type DynamicRegistration struct {
	DynamicRegistration bool `json:"dynamicRegistration"`
}

// Refresh says whether a client can be told to ask again.
type Refresh struct {
	RefreshSupport bool `json:"refreshSupport"`
}

// InitializeResult is what the server says first.
type InitializeResult struct {
	Capabilities ServerCapabilities `json:"capabilities"`
	ServerInfo   ServerInfo         `json:"serverInfo"`
}

// ServerInfo names the server.
type ServerInfo struct {
	Name    string `json:"name"`
	Version string `json:"version,omitempty"`
}

// ServerCapabilities is what the server can do.
type ServerCapabilities struct {
	PositionEncoding          string                 `json:"positionEncoding"`
	TextDocumentSync          TextDocumentSync       `json:"textDocumentSync"`
	HoverProvider             bool                   `json:"hoverProvider,omitempty"`
	CompletionProvider        *CompletionOptions     `json:"completionProvider,omitempty"`
	SignatureHelpProvider     *SignatureHelpOptions  `json:"signatureHelpProvider,omitempty"`
	DefinitionProvider        bool                   `json:"definitionProvider,omitempty"`
	ReferencesProvider        bool                   `json:"referencesProvider,omitempty"`
	DocumentHighlightProvider bool                   `json:"documentHighlightProvider,omitempty"`
	DocumentSymbolProvider    bool                   `json:"documentSymbolProvider,omitempty"`
	CodeActionProvider        *CodeActionOptions     `json:"codeActionProvider,omitempty"`
	CodeLensProvider          *ResolveOptions        `json:"codeLensProvider,omitempty"`
	DocumentLinkProvider      *ResolveOptions        `json:"documentLinkProvider,omitempty"`
	WorkspaceSymbolProvider   bool                   `json:"workspaceSymbolProvider,omitempty"`
	DocumentFormatting        bool                   `json:"documentFormattingProvider,omitempty"`
	DocumentRangeFormatting   bool                   `json:"documentRangeFormattingProvider,omitempty"`
	RenameProvider            *RenameOptions         `json:"renameProvider,omitempty"`
	FoldingRangeProvider      bool                   `json:"foldingRangeProvider,omitempty"`
	SelectionRangeProvider    bool                   `json:"selectionRangeProvider,omitempty"`
	ExecuteCommandProvider    *ExecuteCommandOptions `json:"executeCommandProvider,omitempty"`
	SemanticTokensProvider    *SemanticTokensOptions `json:"semanticTokensProvider,omitempty"`
	InlayHintProvider         bool                   `json:"inlayHintProvider,omitempty"`
	DiagnosticProvider        *DiagnosticOptions     `json:"diagnosticProvider,omitempty"`
	Workspace                 WorkspaceOptions       `json:"workspace"`
}

// Kinds of TextDocumentSync.
const SyncIncremental = 2

// TextDocumentSync says how a client tells of changes.
type TextDocumentSync struct {
	OpenClose bool        `json:"openClose"`
	Change    int         `json:"change"`
	Save      SaveOptions `json:"save"`
}

// SaveOptions says whether a client sends the text with didSave.
type SaveOptions struct {
	IncludeText bool `json:"includeText"`
}

// CompletionOptions says what starts completion.
type CompletionOptions struct {
	TriggerCharacters []string `json:"triggerCharacters,omitempty"`
}

// SignatureHelpOptions says what starts signature help.
type SignatureHelpOptions struct {
	TriggerCharacters   []string `json:"triggerCharacters,omitempty"`
	RetriggerCharacters []string `json:"retriggerCharacters,omitempty"`
}

// CodeActionOptions lists the kinds of code action that there are.
type CodeActionOptions struct {
	CodeActionKinds []string `json:"codeActionKinds,omitempty"`
	ResolveProvider bool     `json:"resolveProvider,omitempty"`
}

// ResolveOptions says whether an item is filled in by a request of its own.
type ResolveOptions struct {
	ResolveProvider bool `json:"resolveProvider,omitempty"`
}

// RenameOptions says whether a rename can be prepared.
type RenameOptions struct {
	PrepareProvider bool `json:"prepareProvider,omitempty"`
}

// ExecuteCommandOptions lists the commands.
type ExecuteCommandOptions struct {
	Commands []string `json:"commands"`
}

// SemanticTokensOptions lists the names of tokens, by their numbers.
type SemanticTokensOptions struct {
	Legend SemanticTokensLegend `json:"legend"`
	Range  bool                 `json:"range,omitempty"`
	Full   bool                 `json:"full,omitempty"`
}

// SemanticTokensLegend lists the names of types and of modifiers, by their numbers.
type SemanticTokensLegend struct {
	TokenTypes     []string `json:"tokenTypes"`
	TokenModifiers []string `json:"tokenModifiers"`
}

// DiagnosticOptions says that findings can be asked for.
type DiagnosticOptions struct {
	Identifier            string `json:"identifier,omitempty"`
	InterFileDependencies bool   `json:"interFileDependencies"`
	WorkspaceDiagnostics  bool   `json:"workspaceDiagnostics"`
}

// WorkspaceOptions says how the server follows the folders of a workspace.
type WorkspaceOptions struct {
	WorkspaceFolders WorkspaceFoldersOptions `json:"workspaceFolders"`
}

// WorkspaceFoldersOptions is part of WorkspaceOptions.
type WorkspaceFoldersOptions struct {
	Supported           bool `json:"supported"`
	ChangeNotifications bool `json:"changeNotifications"`
}

// DidChangeWorkspaceFoldersParams tells of folders that came and went.
type DidChangeWorkspaceFoldersParams struct {
	Event struct {
		Added   []WorkspaceFolder `json:"added"`
		Removed []WorkspaceFolder `json:"removed"`
	} `json:"event"`
}

// DidChangeConfigurationParams tells of settings that have changed.
type DidChangeConfigurationParams struct {
	Settings json.RawMessage `json:"settings"`
}

// DidChangeWatchedFilesParams tells of files that have changed on disk.
type DidChangeWatchedFilesParams struct {
	Changes []FileEvent `json:"changes"`
}

// Types of a FileEvent.
const (
	FileCreated = 1 + iota
	FileChanged
	FileDeleted
)

// A FileEvent is one file that was created, changed or deleted.
type FileEvent struct {
	URI  string `json:"uri"`
	Type int    `json:"type"`
}

// RegistrationParams asks a client for more.
type RegistrationParams struct {
	Registrations []Registration `json:"registrations"`
}

// A Registration is one thing that a client is asked for.
type Registration struct {
	ID              string `json:"id"`
	Method          string `json:"method"`
	RegisterOptions any    `json:"registerOptions,omitempty"`
}

// WatchedFilesOptions are the RegisterOptions of workspace/didChangeWatchedFiles.
type WatchedFilesOptions struct {
	Watchers []FileSystemWatcher `json:"watchers"`
}

// A FileSystemWatcher is a pattern of paths.
type FileSystemWatcher struct {
	GlobPattern string `json:"globPattern"`
}

// Types of a message.
const (
	MessageError = 1 + iota
	MessageWarning
	MessageInfo
	MessageLog
)

// ShowMessageParams is a message for the person who writes.
type ShowMessageParams struct {
	Type    int    `json:"type"`
	Message string `json:"message"`
}

// ShowDocumentParams asks a client to show a document.
type ShowDocumentParams struct {
	URI       string `json:"uri"`
	External  bool   `json:"external,omitempty"`
	TakeFocus bool   `json:"takeFocus,omitempty"`
	Selection *Range `json:"selection,omitempty"`
}

// ShowDocumentResult says whether the document is shown.
type ShowDocumentResult struct {
	Success bool `json:"success"`
}

// ExecuteCommandParams asks for a command.
type ExecuteCommandParams struct {
	Command   string            `json:"command"`
	Arguments []json.RawMessage `json:"arguments,omitempty"`
}

// ApplyWorkspaceEditParams asks a client to make edits.
type ApplyWorkspaceEditParams struct {
	Label string        `json:"label,omitempty"`
	Edit  WorkspaceEdit `json:"edit"`
}

// ApplyWorkspaceEditResult says whether the edits were made.
type ApplyWorkspaceEditResult struct {
	Applied       bool   `json:"applied"`
	FailureReason string `json:"failureReason,omitempty"`
}
