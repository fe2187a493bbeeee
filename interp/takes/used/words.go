// A rack of the cut in words.

package used

import (
	"fmt"
	"strings"

	"pullscore/interp/units"
)

// Words says how a rack looks in the cut, and which other takes were sharp where it
// is not.
func (u *Use) Words() string {
	text := "not logged"
	switch {
	case u.Sharp == Sharp:
		return "sharp"
	case u.Sharp == Part:
		text = "cut before it lands"
	case u.Sharp == Soft && u.Beyond > 1 && u.Error > 0:
		text = fmt.Sprintf("soft, %s windows past", units.Decimal(float64(u.Beyond), 1))
	case u.Sharp == Soft && u.Beyond > 1:
		text = fmt.Sprintf("soft, %s windows short", units.Decimal(float64(u.Beyond), 1))
	case u.Sharp == Soft:
		text = "soft, as the log says"
	case u.Logged:
		text = "logged, and nothing says whether it was sharp"
	case u.Undecided > 0:
		text = fmt.Sprintf("not logged; %s without a take, clip or timecode that tells", units.Count(u.Undecided, "row"))
	}
	switch len(u.Others) {
	case 0:
		return text
	case 1:
		return text + "; " + u.Others[0] + " is sharp"
	}
	return text + "; " + strings.Join(u.Others, ", ") + " are sharp"
}
