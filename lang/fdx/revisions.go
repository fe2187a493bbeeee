// What stands behind the page in the file: the sets of revisions, and the title.

package fdx

import (
	"strings"

	"pullscore/lang/fountain"
	"pullscore/lang/lines"
)

// A History is the sets of revisions that a page has been through.
type History struct {
	Sets   []fountain.Revision
	Active int // the number of the one that is running; 0: none
}

// mostSets is how many sets are read: a script has some ten.
const mostSets = 1000

// Revisions returns the sets of revisions. They stand behind the content, and are
// looked for from the end, so that the page need not be read twice.
func Revisions(t *lines.Text) (h History) {
	d := behind(t, "<Revisions")
	if d == nil {
		return h
	}
	top, err := d.child()
	if err != nil {
		return h
	}
	h.Active = number(top, "ActiveSet")
	for {
		e, err := d.child()
		if err != nil || len(d.open) < 1 || len(h.Sets) == mostSets {
			return h
		}
		if n := number(e, "ID"); e.Name.Local == "Revision" && n > 0 {
			h.Sets = append(h.Sets, fountain.Revision{Number: n, Name: attribute(e, "Name")})
		}
		if d.skip() != nil {
			return h
		}
	}
}

// byNumber returns the names of sets.
func byNumber(sets []fountain.Revision) map[int]string {
	names := map[int]string{}
	for _, s := range sets {
		names[s.Number] = s.Name
	}
	return names
}

// Title returns the first line of the title page; empty where there is none.
func Title(t *lines.Text) string {
	d := behind(t, "<TitlePage")
	if d == nil {
		return ""
	}
	if _, err := d.child(); err != nil {
		return ""
	}
	for len(d.open) > 0 {
		e, err := d.child()
		if err != nil {
			return ""
		}
		if e.Name.Local != "Text" {
			continue
		}
		var text strings.Builder
		if err := d.textTo(&text); err != nil {
			return ""
		}
		if title := strings.Join(strings.Fields(text.String()), " "); title != "" {
			return title
		}
	}
	return ""
}

// behind returns the tokens from the last element of a kind on; nil: there is none.
func behind(t *lines.Text, element string) *tokens {
	at := strings.LastIndex(t.Content, element)
	if at < 0 {
		return nil
	}
	return newTokens(&lines.Text{Name: t.Name, Content: t.Content[at:]}) // it tells no progress
}
