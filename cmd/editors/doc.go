// Package editors holds the files that teach editors the plan language. It has no code
// but its tests, which hold these files to the language:
//
//   - vscode: the extension for VS Code and editors of its kind
//   - vim: the files for Vim and Neovim
//   - emacs: a mode for Emacs, which colours no soft words but those that begin lines
//
// The grammars colour by words and shapes alone. go generate ./lang writes their lists
// of words from the tags of the statements. A soft word has its colour only where its
// statement gives it a meaning; anywhere else it is a name.
package editors
