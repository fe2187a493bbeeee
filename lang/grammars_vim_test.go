package lang

import (
	"fmt"
	"strings"
)

// vimWords returns the word lists of the Vim syntax.
func vimWords(n neighbours) string {
	var b strings.Builder
	b.WriteString("\" Word lists of the Vim syntax. go generate ./lang writes this file.\n")
	put := func(says, name, value string) {
		fmt.Fprintf(&b, "\n\" %s\nlet pullscore#words#%s = %s\n", says, name, value)
	}
	hard, soft := statementWords()
	put("Words that are never names.", "keywords", vimList(Keywords()))
	put("Words that mean something at their place alone.", "soft", vimList(softBut(nil)))
	put("Units.", "units", vimList(wordUnits()))
	put("Words that begin statements, and are names before : ( and moves.", "soft_statements", vimList(soft))
	put("Words that begin statements, each group with the soft words inside of them.", "inside", vimGroups(groupsOf(append(hard, soft...), n.soft)))
	put("Soft words of NAME moves.", "moves", vimList(n.soft[movesWord]))
	put("Words that a name can follow, each group with the soft words that can follow too\n\" and mean something there.", "before_names", vimGroups(n.behindGroups()))
	return b.String()
}

func vimList(words []string) string {
	if len(words) == 0 {
		return "[]"
	}
	return "['" + strings.Join(words, "', '") + "']"
}

func vimGroups(groups []group) string {
	var b strings.Builder
	b.WriteString("[\n")
	for _, g := range groups {
		fmt.Fprintf(&b, "      \\ [%s, %s],\n", vimList(g.words), vimList(g.soft))
	}
	return b.String() + "      \\ ]"
}
