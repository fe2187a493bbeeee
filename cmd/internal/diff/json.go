// A difference as JSON, by the promise to scripts.

package diff

import (
	"encoding/json"
	"io"

	"pullscore/cmd/internal/findings"
	"pullscore/lang"
)

// WriteJSON writes what changed in plans; those that are the same stand among
// them.
func WriteJSON(w io.Writer, plans []Plan) error {
	same := true
	for _, p := range plans {
		same = same && !p.Differs()
	}
	return findings.Encode(w, struct {
		Same  bool   `json:"same"`
		Plans []Plan `json:"plans"`
	}{same, append([]Plan{}, plans...)})
}

// MarshalJSON writes the finding as every command does, and whether it came or
// is gone.
func (f Finding) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Change Change `json:"change"`
		findings.Finding
	}{f.Change, findings.List([]lang.Diagnostic{f.Is})[0]})
}
