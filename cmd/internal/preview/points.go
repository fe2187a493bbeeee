// What somebody points at in an editor lights on the page, and what is picked on the page
// is told to the editor.

package preview

import (
	"encoding/json"
	"fmt"
	"net/http"
)

// A toldPoint names a pull of a shot; Pull 0 is none of them.
type toldPoint struct {
	Plan string `json:"plan"`
	Shot string `json:"shot"`
	Pull int    `json:"pull"`
}

// A pointed is a point as browsers are told. A browser that opens its stream anew gets the
// last one again: it knows by N whether it had that, and by Old that nobody points now.
type pointed struct {
	toldPoint
	N   int64 `json:"n"`
	Old bool  `json:"old,omitempty"`
}

// event returns the point as an event of the stream.
func (p pointed) event() string { return fmt.Sprintf("event: point\ndata: %s\n\n", mustJSON(p)) }

// Point has every page that is open show a shot of a plan, and light one of its pulls; pull
// 0 lights none. It never waits for a browser.
func (s *Server) Point(plan, shot string, pull int) {
	s.streams.point(toldPoint{plan, shot, pull})
}

// postPick tells whoever wants to know which pull somebody has picked on the page.
func (s *Server) postPick(w http.ResponseWriter, r *http.Request) {
	var told toldPoint
	decoder := json.NewDecoder(r.Body)
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&told); err != nil {
		http.Error(w, "That is no pull.", http.StatusBadRequest)
		return
	}
	p := s.shown.Load().state.Plan(told.Plan)
	if p == nil || s.picked == nil {
		http.Error(w, "Nobody wants to know that.", http.StatusNotFound)
		return
	}
	shot := shotOf(drawnOf(p), told.Shot)
	if shot == nil {
		http.Error(w, "The plan has no such shot.", http.StatusNotFound)
		return
	}
	pull := pullOf(shot, told.Pull)
	if pull == nil {
		http.Error(w, "The shot has no such pull.", http.StatusNotFound)
		return
	}
	s.picked(pull.File, pull.Line, pull.Column)
	reply(w, struct{}{})
}
