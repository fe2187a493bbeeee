// Tries that the page keeps: rows of a log of their own beside the plan. A hand
// is never fitted to them, so they never go into a log that a plan names.

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
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"pullscore/cmd/internal/rebuild"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/interp/units"
)

// logSuffix takes the place of a plan's extension in the name of the log of its
// tries.
const logSuffix = takes.TriesSuffix

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
	file := logOf(p.Path)
	if refused(w, s.shown.Load().state, file) {
		return
	}
	if err := appendTake(file, takes.Header, take); err != nil {
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
		Travel: float64(pull.HandDeg), Error: told.Error, Time: told.Time, Landed: takes.LandedAt(shot, pull, told.Error),
		Distance: markOf(pull), FNumber: shot.Stop,
		Hit:  hitOf(shot, pull, told.Error),
		Note: "page, " + by,
	}, nil
}

// signOf marks all that a try at a pull depends on: what the hand is to do and
// when, how well, on which ring, and whose hand it is. The number of the pull is
// not in it, since a pull that is written above shifts it.
func signOf(s *plan.Shot, p *plan.Pull) string {
	num, den := perSecond(s)
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

// markOf returns the distance of a pull's mark as a log has it, in metres: to a
// millimetre, or "inf".
func markOf(p *plan.Pull) string {
	if p.ToM.IsInf() {
		return "inf"
	}
	return units.Decimal(float64(p.ToM), 3)
}

// longestName is how many bytes systems allow the name of a file.
const longestName = 255

// logOf returns where the tries at a plan are kept: beside it, by its name, which
// is shortened where systems would refuse it.
func logOf(path string) string { return besidePlan(path, logSuffix) }

// besidePlan returns the file of a plan that ends so.
func besidePlan(path, suffix string) string {
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	for len(name)+len(suffix) > longestName {
		_, size := utf8.DecodeLastRuneInString(name)
		name = name[:len(name)-size]
	}
	return filepath.Join(filepath.Dir(path), name+suffix)
}

// refused answers that a watched plan names the file, if one does, and reports whether it
// has.
func refused(w http.ResponseWriter, state *rebuild.State, file string) bool {
	by := usedBy(state, file)
	if by == nil {
		return false
	}
	http.Error(w, fmt.Sprintf("%s uses %s itself, and the page never writes into what a plan uses", filepath.Base(by.Path), filepath.Base(file)), http.StatusConflict)
	return true
}

// usedBy returns a watched plan that names the file, in a takes statement or
// another, or nil. The file need not exist for that.
func usedBy(state *rebuild.State, file string) *rebuild.Plan {
	for _, p := range state.Plans {
		if slices.ContainsFunc(p.Files, func(used string) bool { return sameFile(used, file) }) {
			return p
		}
	}
	return nil
}

// sameFile reports whether two paths lead to one file, by name or by a link.
func sameFile(a, b string) bool {
	x, errX := filepath.Abs(a)
	y, errY := filepath.Abs(b)
	if errX == nil && errY == nil && x == y {
		return true
	}
	one, errX := os.Stat(a)
	other, errY := os.Stat(b)
	return errX == nil && errY == nil && os.SameFile(one, other)
}
