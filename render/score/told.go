// What the table of pulls says, for those who show it otherwise.

package score

import "pullscore/interp/plan"

// A Figure is a cell of the table of pulls, with the title of its column.
type Figure struct{ Title, Text string }

// Told returns what the table of pulls says of a pull: its name, and all that its columns
// have to say of it, those too for which a page has no room.
func Told(s *plan.Shot, p *plan.Pull) (name string, figures []Figure) {
	for _, c := range pullColumns(s) {
		switch text := c.cell(p); {
		case text == "":
		case c.title == "":
			name = text
		default:
			figures = append(figures, Figure{c.title, text})
		}
	}
	return name, figures
}
