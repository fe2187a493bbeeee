// What can be asked for, in one table.

package preview

import (
	"encoding/json"
	"net/http"
)

// A route is a method with a path, and what answers it.
type route struct {
	pattern string
	handle  http.HandlerFunc
}

// routes are all that is answered. Whatever comes in has passed the guard: a
// POST has brought the page's token, its body is JSON and has at most maxBody
// bytes.
func (s *Server) routes() []route {
	return []route{
		{"GET /events", s.getEvents},
		{"GET /api/state", s.getState},
		{"GET /api/score", s.getScore},
		{"GET /api/stage", s.getStage},
		{"POST /api/pick", s.postPick},
		{"POST /api/take", s.postTake},
		{"POST /api/result", s.postResult},
		{"POST /api/undo", s.postUndo},
		{"GET /", s.getAsset},
	}
}

func (s *Server) mux() *http.ServeMux {
	mux := http.NewServeMux()
	for _, r := range s.routes() {
		mux.HandleFunc(r.pattern, r.handle)
	}
	return mux
}

// getState answers with what the page shows, as in every event.
func (s *Server) getState(w http.ResponseWriter, _ *http.Request) {
	writeJSON(w, s.shown.Load().data)
}

// writeJSON answers with JSON that is made anew for each request.
func writeJSON(w http.ResponseWriter, data []byte) {
	h := w.Header()
	h.Set("Content-Type", "application/json")
	h.Set("Cache-Control", "no-store")
	w.Write(data) //nolint:errcheck // the browser has gone
}

// reply answers with a value as JSON.
func reply(w http.ResponseWriter, value any) {
	data, err := json.Marshal(value)
	if err != nil {
		http.Error(w, "the answer cannot be written as JSON", http.StatusInternalServerError)
		return
	}
	writeJSON(w, data)
}
