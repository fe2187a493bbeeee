// Tries that the page keeps: rows of a log of takes beside the plan.

package preview

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"pullscore/cmd/internal/rebuild"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
)

// logSuffix takes the place of a plan's extension in the name of its log.
const logSuffix = ".takes.csv"

// A toldTake is a try as the page sends it. What it was and of whom is the
// plan's to say, and where it is kept, ours.
type toldTake struct {
	Plan  string  `json:"plan"`
	Shot  string  `json:"shot"`
	Pull  int     `json:"pull"`
	Sign  string  `json:"sign"` // of the pull as it was tried, see signOf
	By    string  `json:"by"`
	Error float64 `json:"error_deg"`
	Time  float64 `json:"time_s"`
}

// means are the ways to turn the wheel of the page.
var means = map[string]string{
	"wheel": "mouse wheel", "drag": "pointer", "keys": "keys", "midi": "MIDI controller", "mixed": "several means",
}

// postTake appends a try to the log of its plan and answers with the file's
// name.
func (s *Server) postTake(w http.ResponseWriter, r *http.Request) {
	var told toldTake
	decoder := json.NewDecoder(r.Body)
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&told); err != nil {
		http.Error(w, "That is no take.", http.StatusBadRequest)
		return
	}
	p := s.shown.Load().state.Plan(told.Plan)
	if p == nil {
		http.Error(w, "No such plan is watched.", http.StatusNotFound)
		return
	}
	take, err := takeOf(p, told, time.Now())
	if err != nil {
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	file := logOf(p.Path, shotOf(drawnOf(p), told.Shot).Log)
	if err := appendTake(file, take); err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	reply(w, map[string]string{"file": filepath.Base(file)})
}

// takeOf checks a try against the plan. Whether it was a hit follows from the
// window, and the travel from the marks, so neither is taken on trust.
func takeOf(p *rebuild.Plan, told toldTake, now time.Time) (takes.Take, error) {
	drawn := drawnOf(p)
	shot := shotOf(drawn, told.Shot)
	if shot == nil {
		return takes.Take{}, errors.New("the plan has no such shot")
	}
	pull := pullOf(shot, told.Pull)
	if pull == nil || !pull.HandDeg.Known() || !pull.ToDeg.Known() {
		return takes.Take{}, errors.New("the shot has no such pull by angle")
	}
	by, ok := means[told.By]
	if !ok {
		return takes.Take{}, errors.New("a take says by what it was turned")
	}
	throw := shot.Optics.Ring.Throw() * float64(shot.Gear)
	switch {
	case told.Sign != signOf(shot, pull):
		return takes.Take{}, errors.New("the plan has changed since, and this pull with it")
	case !(math.Abs(told.Error) <= throw):
		return takes.Take{}, errors.New("the error is larger than the whole turn")
	case !(told.Time > 0 && told.Time <= float64(shot.Duration)):
		return takes.Take{}, errors.New("the time is longer than the shot, or none")
	}
	title := drawn.Title
	if title == "" {
		title = filepath.Base(p.Path)
	}
	return takes.Take{
		Date: now.Format(time.DateOnly), Plan: title, Shot: shot.ID, Pull: pull.Number, Puller: shot.Puller,
		Travel: float64(pull.HandDeg), Error: told.Error, Time: told.Time, Hit: hitOf(shot, pull, told.Error),
		Note: "page, " + by,
	}, nil
}

// signOf marks all that a try at a pull depends on: what the hand is to do and
// when, how well, on which ring, and whose hand it is. The number of the pull is
// not in it, since a pull that is written above shifts it.
func signOf(s *plan.Shot, p *plan.Pull) string {
	num, den := s.Rate.Exact()
	ring := plan.None()
	if s.Optics.Ring != nil {
		ring = plan.Number(s.Optics.Ring.Throw()) * s.Gear
	}
	sum := sha256.Sum256(mustJSON([]any{
		p.Kind, p.From, p.To, p.Profile, p.Start, p.Land, p.FromDeg * s.Gear, p.ToDeg * s.Gear,
		p.WindowHand, p.OpenNear, p.OpenFar, ring, num, den, s.Puller,
	}))
	return hex.EncodeToString(sum[:8])
}

func pullOf(s *plan.Shot, number int) *plan.Pull {
	for _, p := range s.Pulls {
		if p.Number == number {
			return p
		}
	}
	return nil
}

// hitOf tells whether a landing so far past the mark lies in the window.
func hitOf(s *plan.Shot, p *plan.Pull, past float64) takes.Hit {
	if p.ToDeg < p.FromDeg {
		past = -past
	}
	deg := float64(p.ToDeg*s.Gear) + past
	if (p.OpenNear || deg >= float64(p.WindowHand[0])) && (p.OpenFar || deg <= float64(p.WindowHand[1])) {
		return takes.Sharp
	}
	return takes.Missed
}

// logOf returns where the takes of a plan are kept: in the log that the plan
// names for its puller if that lies within the plan's folder, else beside the
// plan, by the plan's name.
func logOf(path, named string) string {
	if inside, err := filepath.Rel(filepath.Dir(path), named); named != "" && err == nil && filepath.IsLocal(inside) {
		return named
	}
	return strings.TrimSuffix(path, filepath.Ext(path)) + logSuffix
}

// logs has one row written at a time.
var logs sync.Mutex

// appendTake appends a row. Only a regular file is written to, and no link is
// followed: the log lies beside its plan.
func appendTake(path string, t takes.Take) error {
	logs.Lock()
	defer logs.Unlock()
	name := filepath.Base(path)
	if info, err := os.Lstat(path); err == nil && !info.Mode().IsRegular() {
		return fmt.Errorf("%s is no regular file", name)
	}
	if err := takes.AppendFile(path, t); err != nil {
		return fmt.Errorf("%s: %w", name, plainly(err))
	}
	return nil
}

// plainly takes the path out of an error of the system.
func plainly(err error) error {
	var at *os.PathError
	if errors.As(err, &at) {
		return at.Err
	}
	return err
}
