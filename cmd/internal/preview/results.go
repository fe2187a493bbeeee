// How takes went on set: a tap each, kept as rows of a log beside the plan, the last of
// which can be taken back.

package preview

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"pullscore/cmd/internal/rebuild"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
)

// resultSuffix takes the place of a plan's extension in the name of the log of its takes.
const resultSuffix = ".takes.csv"

// resultHeader is the first row of such a log. None of its takes was measured, so it has no
// column for that: they count, and no hand is fitted to them.
var resultHeader = strings.Join([]string{"date", "plan", "shot", "pull", "take", "hit", "result", "distance_m", "stop", "puller", "note"}, ",") + "\n"

// mostTakes is the largest number of a take.
const mostTakes = 999

// A toldResult is how a take went, as the page sends it.
type toldResult struct {
	Plan   string `json:"plan"`
	Shot   string `json:"shot"`
	Pull   int    `json:"pull"`
	Name   string `json:"name"` // of the pull as the page shows it
	Take   int    `json:"take"`
	Result string `json:"result"`
}

// results are the rows that pages have written, so that the last can be taken back. It
// writes one at a time.
type results struct {
	mu      sync.Mutex
	written map[string][]row // by the path of the log
}

// A row is what was written at the end of a log.
type row struct {
	from int64
	text []byte
}

// postResult adds a row to the log of a plan's takes, and answers with the file's name.
func (s *Server) postResult(w http.ResponseWriter, r *http.Request) {
	var told toldResult
	p, file := s.logFor(w, r, &told, func() string { return told.Plan })
	if p == nil {
		return
	}
	take, err := resultOf(p, told, time.Now())
	if err != nil {
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	if err := s.results.add(file, take); err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	reply(w, map[string]string{"file": filepath.Base(file)})
}

// postUndo takes back the last row that a page has written into the log of a plan.
func (s *Server) postUndo(w http.ResponseWriter, r *http.Request) {
	var told struct {
		Plan string `json:"plan"`
	}
	p, file := s.logFor(w, r, &told, func() string { return told.Plan })
	if p == nil {
		return
	}
	if err := s.results.undo(file); err != nil {
		http.Error(w, err.Error(), http.StatusConflict)
		return
	}
	reply(w, map[string]string{"file": filepath.Base(file)})
}

// logFor reads a request about the log of a plan's takes into told, and returns the plan and
// the log. Where the page may not write there, it answers so and returns nil.
func (s *Server) logFor(w http.ResponseWriter, r *http.Request, told any, key func() string) (p *rebuild.Plan, file string) {
	decoder := json.NewDecoder(r.Body)
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(told); err != nil {
		http.Error(w, "That is no take.", http.StatusBadRequest)
		return nil, ""
	}
	state := s.shown.Load().state
	if p = state.Plan(key()); p == nil {
		http.Error(w, "No such plan is watched.", http.StatusNotFound)
		return nil, ""
	}
	file = besidePlan(p.Path, resultSuffix)
	if refused(w, state, file) {
		return nil, ""
	}
	return p, file
}

// resultOf checks how a take went against the plan.
func resultOf(p *rebuild.Plan, told toldResult, now time.Time) (takes.Take, error) {
	drawn := drawnOf(p)
	shot := shotOf(drawn, told.Shot)
	if shot == nil {
		return takes.Take{}, errors.New("the plan has no such shot")
	}
	pull := pullOf(shot, told.Pull)
	hit, ok := takes.ResultOf(told.Result)
	switch {
	case pull == nil || nameOf(shot, pull) != told.Name:
		return takes.Take{}, errors.New("the plan has changed since, and this pull with it")
	case !ok:
		return takes.Take{}, errors.New("a take was sharp, early, late or buzz")
	case told.Take < 1 || told.Take > mostTakes:
		return takes.Take{}, fmt.Errorf("takes count from 1 to %d", mostTakes)
	}
	title := drawn.Title
	if title == "" {
		title = filepath.Base(p.Path)
	}
	return takes.Take{
		Date: now.Format("2006-01-02T15:04:05"), Plan: title, Shot: shot.ID, Pull: pull.Number, OnSet: strconv.Itoa(told.Take), Puller: shot.Puller,
		Hit: hit, Result: told.Result, Distance: markOf(pull), FNumber: shot.Stop, Unmeasured: true, Note: "tapped",
	}, nil
}

// nameOf returns the name of a pull as the page shows it.
func nameOf(s *plan.Shot, p *plan.Pull) string {
	name, _ := tellFigures(s, p)
	return name
}

// add adds a take to a log.
func (r *results) add(path string, take takes.Take) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	return inLog(path, resultHeader, func(f *os.File) error {
		from, err := sizeOf(f)
		if err != nil {
			return err
		}
		if err := takes.AppendTo(f, filepath.Base(path), take); err != nil {
			return err
		}
		to, err := sizeOf(f)
		if err != nil {
			return err
		}
		text := make([]byte, to-from)
		if _, err := f.ReadAt(text, from); err != nil {
			return err
		}
		if r.written == nil {
			r.written = map[string][]row{}
		}
		r.written[path] = append(r.written[path], row{from, text})
		return nil
	})
}

// undo takes the last row that was added away again, if it is still the end of the log.
func (r *results) undo(path string) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	list := r.written[path]
	if len(list) == 0 {
		return errors.New("nothing has been kept here that could be taken back")
	}
	last := list[len(list)-1]
	return inLog(path, resultHeader, func(f *os.File) error {
		text := make([]byte, len(last.text))
		size, err := sizeOf(f)
		if err != nil {
			return err
		}
		if _, err := f.ReadAt(text, last.from); err != nil || size != last.from+int64(len(text)) || !bytes.Equal(text, last.text) {
			return errors.New("the log has changed since, so its last row stays")
		}
		if err := f.Truncate(last.from); err != nil {
			return err
		}
		r.written[path] = slices.Delete(list, len(list)-1, len(list))
		return nil
	})
}

func sizeOf(f *os.File) (int64, error) {
	info, err := f.Stat()
	if err != nil {
		return 0, err
	}
	return info.Size(), nil
}
