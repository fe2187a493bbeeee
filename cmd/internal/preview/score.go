// The score of a shot, as the page shows it.

package preview

import (
	"bytes"
	"net/http"
	"strconv"

	"pullscore/cmd/internal/rebuild"
	"pullscore/render/svg"
)

// A toldScore is the drawing of a shot: its pages from the first to the last.
type toldScore struct {
	Plan    string      `json:"plan"`
	Shot    string      `json:"shot"`
	Version uint64      `json:"version"` // of the plan
	Pages   []toldSheet `json:"pages"`
}

// A toldSheet is one page: an SVG element without styles of its own, the size
// of the page, and where time lies on it.
type toldSheet struct {
	SVG    string     `json:"svg"`
	Width  float64    `json:"width_mm"`
	Height float64    `json:"height_mm"`
	Spans  []toldSpan `json:"spans"`
}

// A toldSpan is a draw.Span.
type toldSpan struct {
	From   float64 `json:"from_s"`
	To     float64 `json:"to_s"`
	Left   float64 `json:"left_mm"`
	Right  float64 `json:"right_mm"`
	Top    float64 `json:"top_mm"`
	Bottom float64 `json:"bottom_mm"`
}

// getScore answers with the pages of a shot, or with page=N, from 1, with that
// page as a file of its own.
func (s *Server) getScore(w http.ResponseWriter, r *http.Request) {
	query := r.URL.Query()
	p := s.shown.Load().state.Plan(query.Get("plan"))
	if p == nil {
		http.Error(w, "No such plan is watched.", http.StatusNotFound)
		return
	}
	sheets := p.Sheets[query.Get("shot")]
	if len(sheets) == 0 {
		http.Error(w, "That shot has no drawing.", http.StatusNotFound)
		return
	}
	if page := query.Get("page"); page != "" {
		n, err := strconv.Atoi(page)
		if err != nil || n < 1 || n > len(sheets) {
			http.Error(w, "That drawing has no such page.", http.StatusNotFound)
			return
		}
		writeSheet(w, sheets[n-1])
		return
	}
	score := toldScore{Plan: p.Key, Shot: query.Get("shot"), Version: p.Version}
	for _, sheet := range sheets {
		told, err := tellSheet(sheet)
		if err != nil {
			http.Error(w, err.Error(), http.StatusInternalServerError)
			return
		}
		score.Pages = append(score.Pages, told)
	}
	reply(w, score)
}

// sheetPolicy is the policy of a drawing that is opened by itself: it has its
// styles within it, and needs nothing else.
const sheetPolicy = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; sandbox"

// writeSheet answers with a page as it is on disk.
func writeSheet(w http.ResponseWriter, sheet *rebuild.Sheet) {
	h := w.Header()
	h.Set("Content-Type", "image/svg+xml")
	h.Set("Content-Security-Policy", sheetPolicy)
	h.Set("Cache-Control", "no-store")
	w.Write(sheet.SVG) //nolint:errcheck // the browser has gone
}

func tellSheet(sheet *rebuild.Sheet) (toldSheet, error) {
	var b bytes.Buffer
	if err := svg.WriteBare(&b, sheet.Page); err != nil {
		return toldSheet{}, err
	}
	t := toldSheet{SVG: b.String(), Width: sheet.Page.W, Height: sheet.Page.H, Spans: []toldSpan{}}
	for _, span := range sheet.Page.Spans {
		t.Spans = append(t.Spans, toldSpan(span))
	}
	return t, nil
}
