// Completion in zsh, by its _arguments.

package completion

import (
	"fmt"
	"strings"

	"github.com/alecthomas/kong"
)

const zshFrame = `#compdef pullscore
# Completion of pullscore for zsh.
_pullscore() {
	local -a commands
	commands=(
%s	)
	if (( CURRENT == 2 )); then
		_describe command commands
		return
	fi
	case $words[2] in
%s	esac
}
# What only the program knows.
_pullscore_ask() {
	local -a list
	list=(${(f)"$(pullscore words $1 -- "${(Q)words[@]}" 2>/dev/null)"})
	compadd -a list
}
_pullscore_shots() { _pullscore_ask shots }
_pullscore_topics() { _pullscore_ask topics }
if [ "$funcstack[1]" = "_pullscore" ]; then
	_pullscore "$@"
else
	compdef _pullscore pullscore
fi
`

// Zsh returns the script.
func Zsh(k *kong.Kong) string {
	var names, cases strings.Builder
	for _, c := range model(k) {
		fmt.Fprintf(&names, "\t\t'%s:%s'\n", c.name, c.help)
		fmt.Fprintf(&cases, "\t%s)\n\t\tshift words; (( CURRENT-- ))\n\t\t_arguments", c.name)
		for _, f := range c.flags {
			for _, s := range f.spellings() {
				fmt.Fprintf(&cases, " \\\n\t\t\t'%s[%s]%s'", s, f.help, zshValue(f))
			}
		}
		switch {
		case c.offer == plans:
			fmt.Fprintf(&cases, ` \`+"\n\t\t\t"+`'*:%s'`, zshOffer(c.offer, nil))
		case c.offer != "" || len(c.words) > 0:
			fmt.Fprintf(&cases, ` \`+"\n\t\t\t"+`'1:%s'`, zshOffer(c.offer, c.words))
		}
		cases.WriteString("\n\t\t;;\n")
	}
	return fmt.Sprintf(zshFrame, &names, &cases)
}

func zshValue(f flag) string {
	if !f.takes {
		return ""
	}
	return ":" + zshOffer(f.offer, f.words)
}

// zshOffer returns what a value is called and what completes it.
func zshOffer(o offer, words []string) string {
	switch o {
	case plans:
		return `plan:_files -g "` + pattern + `"`
	case paths:
		return "file:_files"
	case places:
		return "place:_files"
	case shots:
		return "shot:_pullscore_shots"
	case topics:
		return "topic:_pullscore_topics"
	}
	if len(words) == 0 {
		return "value: "
	}
	return "value:(" + strings.Join(words, " ") + ")"
}
