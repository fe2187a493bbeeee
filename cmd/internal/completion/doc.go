// Package completion writes scripts that complete a command line in a shell,
// from the same model that parses it.
//
//   - bash.go: completion in bash, from version 3.2 on
//   - fish.go: completion in fish
//   - model.go: what can be completed, from the model of the command line
//   - zsh.go: completion in zsh, by its _arguments
package completion
