// The score of a shot, as the page shows it.

package preview

import (
	"bytes"
	"net/http"
	"strconv"

	"pullscore/cmd/internal/rebuild"
	"pullscore/render/svg"
)

// A toldSheet is one page: an SVG element without styles of its own, the size
// of the page, and where time lies on it.
type toldSheet struct {
	Tag    string     `json:"tag"`
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

// A spot is a page of a shot's score, by the key of its plan.
type spot struct {
	plan, shot string
	page       int // from 1
}

// spotOf reads a spot from a request.
func spotOf(r *http.Request) spot {
	query := r.URL.Query()
	page, err := strconv.Atoi(query.Get("page"))
	if err != nil {
		page = 0 // no page
	}
	return spot{query.Get("plan"), query.Get("shot"), page}
}

// sheet returns the page at a spot, or nil.
func (v *view) sheet(at spot) *rebuild.Sheet {
	p := v.state.Plan(at.plan)
	if p == nil {
		return nil
	}
	if sheets := p.Sheets[at.shot]; 1 <= at.page && at.page <= len(sheets) {
		return sheets[at.page-1]
	}
	return nil
}

// getScore answers with a page of a shot's score.
func (s *Server) getScore(w http.ResponseWriter, r *http.Request) {
	sheet := s.shown.Load().sheet(spotOf(r))
	if sheet == nil {
		http.Error(w, "There is no such page of a score.", http.StatusNotFound)
		return
	}
	told, err := tellSheet(sheet)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	reply(w, told)
}

func tellSheet(sheet *rebuild.Sheet) (toldSheet, error) {
	page := sheet.Page()
	var b bytes.Buffer
	if err := svg.WriteBare(&b, page); err != nil {
		return toldSheet{}, err
	}
	t := toldSheet{Tag: sheet.Tag, SVG: b.String(), Width: page.W, Height: page.H, Spans: []toldSpan{}}
	for _, span := range page.Spans {
		t.Spans = append(t.Spans, toldSpan(span))
	}
	return t, nil
}
