// The lists of clips that a plan names.

package film

import (
	"fmt"

	"pullscore/interp/edit"
	"pullscore/interp/load"
	"pullscore/lang"
)

// readClips reads the files that the clips statements name.
func (r *reader) readClips() {
	seen := map[string]*lang.Clips{}
	for _, s := range r.Scope.Clips {
		if !load.NamesFile(s.File, r.Reporter) {
			continue
		}
		path := r.loader.Beside(s.Range().File, s.File.Value)
		if old := seen[path]; old != nil {
			r.Report(lang.Diagnostic{
				Code: "said-twice", Severity: lang.Error, Range: s.Range(),
				Message: fmt.Sprintf("%q is said twice", s.File.Value),
				Related: []lang.Related{{Message: "first here", Range: old.Range()}},
			})
			continue
		}
		seen[path] = s
		f := r.loader.Open(s.File, path, r.Reporter)
		if f == nil {
			continue
		}
		type read struct {
			log   *edit.Log
			diags []lang.Diagnostic
		}
		list := load.FromForeign(r.loader, f, load.Clips, r.Film.Rate.String(), func() read {
			log, diags := edit.ReadLog(f.Text, r.Film.Rate)
			return read{log, diags}
		})
		f.PassOn(s.File, list.diags, r.Reporter)
		r.Clips = append(r.Clips, list.log)
	}
}
