// Completion in fish.

package completion

import (
	"fmt"
	"strings"

	"github.com/alecthomas/kong"
)

// Fish returns the script.
func Fish(k *kong.Kong) string {
	var b strings.Builder
	b.WriteString("# Completion of pullscore for fish.\ncomplete -c pullscore -f\n")
	for _, c := range model(k) {
		fmt.Fprintf(&b, "complete -c pullscore -n __fish_use_subcommand -a %s -d '%s'\n", c.name, c.help)
		when := fmt.Sprintf("complete -c pullscore -n '__fish_seen_subcommand_from %s'", c.name)
		for _, f := range c.flags {
			fmt.Fprintf(&b, "%s %s -d '%s'%s\n", when, fishNames(f), f.help, fishValue(f))
		}
		switch {
		case c.files:
			fmt.Fprintf(&b, "%s -k -a '(__fish_complete_suffix %s)'\n", when, strings.TrimPrefix(pattern, "*"))
		case len(c.words) > 0:
			fmt.Fprintf(&b, "%s -a '%s'\n", when, strings.Join(c.words, " "))
		}
	}
	return b.String()
}

func fishNames(f flag) string {
	names := "-l " + strings.TrimPrefix(f.name, "--")
	if f.short != "" {
		names = "-s " + strings.TrimPrefix(f.short, "-") + " " + names
	}
	return names
}

func fishValue(f flag) string {
	switch {
	case !f.takes:
		return ""
	case f.files:
		return " -r -F"
	case len(f.words) > 0:
		return " -x -a '" + strings.Join(f.words, " ") + "'"
	}
	return " -x"
}
