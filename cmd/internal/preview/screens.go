// Scores as wide as the screens that show them. A browser says how wide its screen is, and
// to which scale it wants time.

package preview

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"net/url"
	"slices"
	"strconv"
	"sync"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score"
	"pullscore/render/score/times"
	"pullscore/render/svg"
)

// How wide a screen may be, in millimetres; what else is asked for is held to that.
const (
	leastWide = 70
	mostWide  = 420
)

// mostPerSecond is the largest scale of time that may be asked for, millimetres.
const mostPerSecond = 160

// screenOf reads a screen from a request; without a width there is none.
func screenOf(query url.Values) (screen times.Screen, ok bool) {
	width, err := strconv.Atoi(query.Get("width"))
	if err != nil {
		return times.Screen{}, false
	}
	screen.Width = float64(min(max(width, leastWide), mostWide))
	if scale, err := strconv.Atoi(query.Get("scale")); err == nil && scale > 0 {
		screen.PerSecond = times.Rung(float64(min(scale, mostPerSecond)))
	}
	return screen, true
}

// keptScreens is how many scores are kept: some for each browser that is open.
const keptScreens = 12

// screens keeps scores that were drawn for screens, the last used first.
type screens struct {
	mu   sync.Mutex
	list []*drawnFor
}

// A drawnFor is the score of a shot on a screen.
type drawnFor struct {
	shot   *plan.Shot
	screen times.Screen
	once   sync.Once
	pages  []toldSheet
	err    error
}

// of returns the score of a shot for a screen, drawn once for all who ask.
func (s *screens) of(shot *plan.Shot, screen times.Screen) ([]toldSheet, error) {
	d := s.entry(shot, screen)
	d.once.Do(func() { d.pages, d.err = drawFor(shot, screen) })
	return d.pages, d.err
}

func (s *screens) entry(shot *plan.Shot, screen times.Screen) *drawnFor {
	s.mu.Lock()
	defer s.mu.Unlock()
	d := &drawnFor{shot: shot, screen: screen}
	if i := slices.IndexFunc(s.list, func(o *drawnFor) bool { return o.shot == shot && o.screen == screen }); i >= 0 {
		d = s.list[i]
		s.list = slices.Delete(s.list, i, i+1)
	}
	s.list = slices.Insert(s.list, 0, d)
	s.list = s.list[:min(len(s.list), keptScreens)]
	return d
}

// drawFor draws a score for a screen.
func drawFor(shot *plan.Shot, screen times.Screen) ([]toldSheet, error) {
	pages, perSecond := score.OnScreen(shot, screen)
	list, tags := make([]toldSheet, len(pages)), make([]string, len(pages))
	for i, page := range pages {
		told, err := tellPage(page)
		if err != nil {
			return nil, err
		}
		sum := sha256.Sum256([]byte(told.SVG))
		tags[i] = hex.EncodeToString(sum[:])
		told.Tag, told.PerSecond = tags[i], perSecond
		list[i] = told
	}
	for i := range list {
		list[i].Tags = tags
	}
	return list, nil
}

// tellPage puts a page into words for the browser, but for its tag.
func tellPage(page *draw.Page) (toldSheet, error) {
	var b bytes.Buffer
	if err := svg.WriteBare(&b, page); err != nil {
		return toldSheet{}, err
	}
	t := toldSheet{SVG: b.String(), Width: page.W - 2*page.Trim, Height: page.H, Origin: page.Trim, Spans: []toldSpan{}}
	for _, span := range page.Spans {
		t.Spans = append(t.Spans, toldSpan(span))
	}
	return t, nil
}
