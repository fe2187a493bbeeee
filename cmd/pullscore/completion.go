// pullscore completion: scripts for shells.

package main

import (
	"fmt"

	"github.com/alecthomas/kong"

	"pullscore/cmd/internal/completion"
)

type completionCmd struct {
	Shell string `arg:"" enum:"bash,zsh,fish" help:"bash, zsh or fish."`
}

// Help explains the command.
func (completionCmd) Help() string {
	return `  bash: pullscore completion bash > ~/.local/share/bash-completion/completions/pullscore
  zsh:  pullscore completion zsh > ~/.zsh/_pullscore     (a folder of $fpath)
  fish: pullscore completion fish > ~/.config/fish/completions/pullscore.fish`
}

// Run prints the script.
func (c *completionCmd) Run(s *session, parser *kong.Kong) error {
	write := map[string]func(*kong.Kong) string{
		"bash": completion.Bash, "zsh": completion.Zsh, "fish": completion.Fish,
	}[c.Shell]
	_, err := fmt.Fprint(s.out, write(parser))
	return err
}
