// Drawings on disk: each replaced in one step, and only by something new.

package rebuild

import (
	"cmp"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"

	"pullscore/cmd/internal/files"
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

// write writes the drawings of a plan that are not on disk as they are, and,
// once all are, removes those of shots that are gone. It returns the files of
// both. Of what cannot be done it tells one, since the others most likely have
// the same fault.
func (r *Rebuilder) write(w *watched) (drawn, removed []string, err error) {
	failed := 0
	current := map[string]bool{}
	for _, shot := range w.plan.Good.Shots {
		for _, sheet := range w.plan.Sheets[shot.ID] {
			current[sheet.File] = true
			if onDisk(sheet) {
				continue
			}
			switch e := r.replace(sheet); {
			case e == nil:
				drawn = append(drawn, sheet.File)
				w.made[sheet.File] = sheet.Tag
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
	if failed == 0 && len(current) > 0 { // a plan without shots most likely is one in the middle of a save
		removed, err = w.tidy(current)
	}
	return drawn, removed, err
}

// tidy removes the drawings that were written here, but for the current ones,
// and returns their files. What cannot be removed is tried again with the next
// change.
func (w *watched) tidy(current map[string]bool) (removed []string, err error) {
	for _, file := range slices.Sorted(maps.Keys(w.made)) {
		if current[file] {
			continue
		}
		if !ours(file, w.made[file]) { // somebody else's by now, or gone
			delete(w.made, file)
			continue
		}
		if e := os.Remove(file); e != nil {
			err = cmp.Or(err, e)
			continue
		}
		delete(w.made, file)
		removed = append(removed, file)
	}
	return removed, err
}

// replace writes a sheet. It never writes over a file that is read.
func (r *Rebuilder) replace(sheet *Sheet) error {
	if r.texts.holds(sheet.File) {
		return fmt.Errorf("%s: a plan is read from this file, so no drawing is written there", sheet.File)
	}
	return files.Write(sheet.File, sheet.SVG())
}

// onDisk reports whether the file of a sheet holds it already.
func onDisk(sheet *Sheet) bool {
	info, err := os.Stat(sheet.File)
	return err == nil && info.Mode().IsRegular() && holds(sheet.File, sheet.Tag)
}

// holds reports whether a file holds the drawing of that tag.
func holds(file, want string) bool {
	data, err := os.ReadFile(file)
	return err == nil && tag(data) == want
}

// ours reports whether a file, which is no link, still is what was written.
func ours(file, want string) bool {
	info, err := os.Lstat(file)
	return err == nil && info.Mode().IsRegular() && holds(file, want)
}

// retry writes drawings that could not be written before, and tells of those
// plans that are complete now.
func (r *Rebuilder) retry() []Change {
	var changes []Change
	for _, w := range r.plans {
		if !w.unmade {
			continue
		}
		if drawn, removed, err := r.write(w); err == nil {
			changes = append(changes, Change{Plan: w.plan, Drawn: drawn, Removed: removed})
		}
	}
	return changes
}
