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
		case c.files:
			fmt.Fprintf(&cases, ` \`+"\n\t\t\t"+`'*:plan:_files -g "%s"'`, pattern)
		case len(c.words) > 0:
			fmt.Fprintf(&cases, ` \`+"\n\t\t\t"+`'1:word:(%s)'`, strings.Join(c.words, " "))
		}
		cases.WriteString("\n\t\t;;\n")
	}
	return fmt.Sprintf(zshFrame, &names, &cases)
}

func zshValue(f flag) string {
	switch {
	case !f.takes:
		return ""
	case f.files:
		return ":place:_files"
	case len(f.words) > 0:
		return ":value:(" + strings.Join(f.words, " ") + ")"
	}
	return ":value: "
}
