// Cues of several speakers.

package fountain

import (
	"strings"

	"pullscore/lang/lines"
)

// together matches what stands between the names of those who speak together.
// Fountain has no rule for it; common practice, no source.
var together = lines.Pattern(`(?i)\s*[&/]\s*|\s+and\s+`)

// Speakers returns the names in a cue, in their order: PAUL & MARTA, PAUL/MARTA
// and PAUL AND MARTA are two. Commas part names only beside one of these signs,
// since a name may have one. There is always one at least, and none is empty
// unless the cue is.
func Speakers(cue string) []string {
	if !together().MatchString(cue) {
		return []string{cue}
	}
	var names []string
	for _, group := range together().Split(cue, -1) {
		for _, name := range strings.Split(group, ",") {
			if name = strings.TrimSpace(name); name != "" {
				names = append(names, name)
			}
		}
	}
	if len(names) < 2 {
		return []string{cue}
	}
	return names
}
