package names

import "pullscore/lang"

func ValueOf(t *lang.Text) string {
	if t == nil {
		return ""
	}
	return t.Value
}
