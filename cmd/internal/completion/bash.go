// Completion in bash, from version 3.2 on: without the helpers of any package.

package completion

import (
	"fmt"
	"strings"

	"github.com/alecthomas/kong"
)

const bashFrame = `# Completion of pullscore for bash.
_pullscore() {
	local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]} words= offer=
	COMPREPLY=()
	if [ "$COMP_CWORD" -eq 1 ]; then
		COMPREPLY=($(compgen -W '%s' -- "$cur"))
		return
	fi
	case "${COMP_WORDS[1]} $prev" in
%s	esac
	if [ -z "$words$offer" ]; then
		case "${COMP_WORDS[1]}" in
%s		esac
	fi
	case "$cur$offer" in
	-*) ;;
	*shots|*topics) _pullscore_ask "$offer"; return ;;
	*plans|*files|*places) _pullscore_files "$offer"; return ;;
	esac
	COMPREPLY=($(compgen -W "$words" -- "$cur"))
}

# What only the program knows. It may hold any sign, so the shell may read none.
_pullscore_ask() {
	local word
	while IFS= read -r word; do
		case "$word" in
		"$cur"*) COMPREPLY+=("$(printf %%q "$word")") ;;
		esac
	done < <(pullscore words "$1" -- "${COMP_WORDS[@]:1}" 2>/dev/null)
}

_pullscore_files() {
	local IFS=$'\n'
	compopt -o filenames 2>/dev/null
	COMPREPLY=($(compgen -d -- "$cur"))
	case "$1" in
	plans) COMPREPLY+=($(compgen -f -X '!%s' -- "$cur")) ;;
	files) COMPREPLY=($(compgen -f -- "$cur")) ;;
	esac
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
		if c.offer != "" {
			arguments.WriteString(" offer=" + string(c.offer))
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
	case f.offer != "":
		fmt.Fprintf(b, "\t%s) offer=%s ;;\n", head, f.offer)
	case len(f.words) > 0:
		fmt.Fprintf(b, "\t%s) words='%s' ;;\n", head, strings.Join(f.words, " "))
	default:
		fmt.Fprintf(b, "\t%s) return ;;\n", head)
	}
}
