// Completion in bash, from version 3.2 on: without the helpers of any package.

package completion

import (
	"fmt"
	"strings"

	"github.com/alecthomas/kong"
)

const bashFrame = `# Completion of pullscore for bash.
_pullscore() {
	local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]} words= files=
	COMPREPLY=()
	if [ "$COMP_CWORD" -eq 1 ]; then
		COMPREPLY=($(compgen -W '%s' -- "$cur"))
		return
	fi
	case "${COMP_WORDS[1]} $prev" in
%s	esac
	if [ -z "$words$files" ]; then
		case "${COMP_WORDS[1]}" in
%s		esac
	fi
	case "$cur$files" in
	-*) ;;
	*plans) _pullscore_files plans; return ;;
	*places) _pullscore_files places; return ;;
	esac
	COMPREPLY=($(compgen -W "$words" -- "$cur"))
}

_pullscore_files() {
	local IFS=$'\n'
	compopt -o filenames 2>/dev/null
	COMPREPLY=($(compgen -d -- "$cur"))
	if [ "$1" = plans ]; then
		COMPREPLY+=($(compgen -f -X '!%s' -- "$cur"))
	fi
}

complete -F _pullscore pullscore
`

// Bash returns the script.
func Bash(k *kong.Kong) string {
	var names []string
	var values, arguments strings.Builder
	for _, c := range model(k) {
		names = append(names, c.name)
		var words []string
		for _, f := range c.flags {
			words = append(words, f.spellings()...)
			bashValue(&values, c, f)
		}
		words = append(words, c.words...)
		fmt.Fprintf(&arguments, "\t\t%s) words='%s'", c.name, strings.Join(words, " "))
		if c.files {
			arguments.WriteString(" files=plans")
		}
		arguments.WriteString(" ;;\n")
	}
	return fmt.Sprintf(bashFrame, strings.Join(names, " "), &values, &arguments, pattern)
}

// bashValue adds the case of a flag's value.
func bashValue(b *strings.Builder, c command, f flag) {
	if !f.takes {
		return
	}
	var cases []string
	for _, s := range f.spellings() {
		cases = append(cases, fmt.Sprintf("'%s %s'", c.name, s))
	}
	head := strings.Join(cases, "|")
	switch {
	case f.files:
		fmt.Fprintf(b, "\t%s) files=places ;;\n", head)
	case len(f.words) > 0:
		fmt.Fprintf(b, "\t%s) words='%s' ;;\n", head, strings.Join(f.words, " "))
	default:
		fmt.Fprintf(b, "\t%s) return ;;\n", head)
	}
}
