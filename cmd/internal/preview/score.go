// The score of a shot, as the page shows it.

package preview

import (
	"net/http"
	"strconv"

	"pullscore/cmd/internal/rebuild"
	"pullscore/render/score/times"
)

// A toldSheet is one page: an SVG element without styles of its own, the size
// of the page, and where time lies on it.
type toldSheet struct {
	For       string     `json:"for"` // what was asked for, as it was
	Tag       string     `json:"tag"`
	Tags      []string   `json:"tags"` // of all pages of the score
	SVG       string     `json:"svg"`
	Width     float64    `json:"width_mm"`
	Height    float64    `json:"height_mm"`
	Origin    float64    `json:"origin_mm"`     // of what is seen, from the drawing's left edge
	PerSecond float64    `json:"per_second_mm"` // the scale of time
	Spans     []toldSpan `json:"spans"`
}

// A toldSpan is a draw.Span.
type toldSpan struct {
	From   float64 `json:"from_s"`
	To     float64 `json:"to_s"`
	Left   float64 `json:"left_mm"`
	Right  float64 `json:"right_mm"`
	Top    float64 `json:"top_mm"`
	Bottom float64 `json:"bottom_mm"`
	Narrow bool    `json:"narrow,omitempty"`
}

// A spot is a page of a shot's score, by the key of its plan.
type spot struct {
	plan, shot string
	page       int           // from 1
	screen     *times.Screen // nil: as on paper
	query      string        // as it was asked for
}

// spotOf reads a spot from a request.
func spotOf(r *http.Request) spot {
	query := r.URL.Query()
	page, err := strconv.Atoi(query.Get("page"))
	if err != nil {
		page = 0 // no page
	}
	at := spot{plan: query.Get("plan"), shot: query.Get("shot"), page: page, query: r.URL.RawQuery}
	if screen, ok := screenOf(query); ok {
		at.screen = &screen
	}
	return at
}

// sheets returns the pages of the shot at a spot, as they are on paper.
func (v *view) sheets(at spot) []*rebuild.Sheet {
	if p := v.state.Plan(at.plan); p != nil {
		return p.Sheets[at.shot]
	}
	return nil
}

// sheet returns the page at a spot; ok is false where there is none. On a screen the page
// after the last is the last: a browser cannot know how many there are.
func (s *Server) sheet(v *view, at spot) (told toldSheet, ok bool, err error) {
	sheets := v.sheets(at)
	if len(sheets) == 0 || at.page < 1 {
		return told, false, nil
	}
	if at.screen != nil {
		pages, err := s.screens.of(sheets[0].Shot(), *at.screen)
		if err != nil {
			return told, false, err
		}
		told = pages[min(at.page, len(pages))-1]
		told.For = at.query
		return told, true, nil
	}
	if at.page > len(sheets) {
		return told, false, nil
	}
	told, err = tellSheet(sheets, at.page)
	told.For = at.query
	return told, err == nil, err
}

// getScore answers with a page of a shot's score.
func (s *Server) getScore(w http.ResponseWriter, r *http.Request) {
	told, ok, err := s.sheet(s.shown.Load(), spotOf(r))
	switch {
	case err != nil:
		http.Error(w, err.Error(), http.StatusInternalServerError)
	case !ok:
		http.Error(w, "There is no such page of a score.", http.StatusNotFound)
	default:
		reply(w, told)
	}
}

// tellSheet puts a page of those that are on paper into words.
func tellSheet(sheets []*rebuild.Sheet, number int) (toldSheet, error) {
	told, err := tellPage(sheets[number-1].Page())
	for _, sheet := range sheets {
		told.Tags = append(told.Tags, sheet.Tag)
	}
	told.Tag = sheets[number-1].Tag
	return told, err
}
