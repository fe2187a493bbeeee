// Drawings on disk: each replaced in one step, and only by something new.

package rebuild

import (
	"fmt"
	"os"
	"path/filepath"

	"pullscore/cmd/internal/paths"
)

// name says where the sheets of a plan are written.
func (r *Rebuilder) name(w *watched, sheets map[string][]*Sheet) {
	r.names.Drop(w.path)
	for _, shot := range w.last.plan.Shots {
		list := sheets[shot.ID]
		for i, sheet := range list {
			tail := ".svg"
			if len(list) > 1 {
				tail = fmt.Sprintf("-%d.svg", i+1)
			}
			sheet.File = filepath.Join(r.opt.Folder, r.names.Give(w.path, stem(w.path, shot.ID), tail))
		}
	}
}

// write writes the drawings of a plan that are not on disk as they are, and
// returns their files. Of those that cannot be written it tells one, since the
// others most likely have the same fault.
func (r *Rebuilder) write(w *watched) (drawn []string, err error) {
	failed := 0
	for _, shot := range w.plan.Good.Shots {
		for _, sheet := range w.plan.Sheets[shot.ID] {
			if onDisk(sheet) {
				continue
			}
			switch e := r.replace(sheet); {
			case e == nil:
				drawn = append(drawn, sheet.File)
			case failed == 0:
				err = e
				fallthrough
			default:
				failed++
			}
		}
	}
	if w.unmade = failed > 0; failed > 1 {
		err = fmt.Errorf("%w (and %d more drawings)", err, failed-1)
	}
	return drawn, err
}

// replace writes a sheet. It never writes over a file that is read.
func (r *Rebuilder) replace(sheet *Sheet) error {
	if r.texts.holds(sheet.File) {
		return fmt.Errorf("%s: a plan is read from this file, so no drawing is written there", sheet.File)
	}
	return paths.Write(sheet.File, sheet.SVG())
}

// onDisk reports whether the file of a sheet holds it already.
func onDisk(sheet *Sheet) bool {
	info, err := os.Stat(sheet.File)
	if err != nil || !info.Mode().IsRegular() {
		return false
	}
	data, err := os.ReadFile(sheet.File)
	return err == nil && tag(data) == sheet.Tag
}

// retry writes drawings that could not be written before, and tells of those
// plans that are complete now.
func (r *Rebuilder) retry() []Change {
	var changes []Change
	for _, w := range r.plans {
		if !w.unmade {
			continue
		}
		if drawn, err := r.write(w); err == nil {
			changes = append(changes, Change{Plan: w.plan, Drawn: drawn})
		}
	}
	return changes
}
