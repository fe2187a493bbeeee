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
		if value := fishOffer(c.offer, c.words); value != "" {
			fmt.Fprintf(&b, "%s %s\n", when, value)
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
	if !f.takes {
		return ""
	}
	if f.offer == paths || f.offer == places {
		return " -r -F"
	}
	return strings.TrimRight(" -x "+fishOffer(f.offer, f.words), " ")
}

// fishOffer returns what completes a value; "" where nothing does.
func fishOffer(o offer, words []string) string {
	switch o {
	case plans:
		return "-k -a '(__fish_complete_suffix " + strings.TrimPrefix(pattern, "*") + ")'"
	case paths, places:
		return "-F"
	case shots, topics:
		return "-a '(pullscore words " + string(o) + " -- (commandline -o)[2..-1] 2>/dev/null)'"
	}
	if len(words) == 0 {
		return ""
	}
	return "-a '" + strings.Join(words, " ") + "'"
}
