// What the page is told: the plans, their shots and their findings. Drawings
// are fetched apart, since a browser shows one shot of all.

package preview

import (
	"encoding/json"
	"fmt"
	"math"
	"path/filepath"
	"slices"

	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/rebuild"
	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/render/draw"
)

// A view is a state as it is told, made once for all browsers.
type view struct {
	state *rebuild.State
	id    string                            // of the event
	data  []byte                            // JSON of a told
	plans map[*rebuild.Plan]json.RawMessage // as they are told
}

// event returns the view as an event of the stream. JSON has no line breaks.
func (v *view) event() string {
	return fmt.Sprintf("id: %s\ndata: %s\n\n", v.id, v.data)
}

// A told is the JSON of a view.
type told struct {
	Run     string            `json:"run"`   // another: the program was started anew
	Token   string            `json:"token"` // for requests that write
	Files   string            `json:"files"` // another: the page's files are others
	Version uint64            `json:"version"`
	Picks   bool              `json:"picks,omitempty"` // somebody wants to know what is picked
	Plans   []json.RawMessage `json:"plans"`           // each a toldPlan
}

type toldPlan struct {
	Key     string     `json:"key"`
	Name    string     `json:"name"`
	Title   string     `json:"title"`
	Version uint64     `json:"version"`
	Stale   bool       `json:"stale"` // the text has errors: the drawings, where there are any, are older
	Shots   []toldShot `json:"shots"`
	// Findings are those of the text as it is now; Old, of a stale plan, those
	// that its drawings show.
	Findings []toldFinding `json:"findings"`
	Causes   []toldCause   `json:"causes,omitempty"` // what several findings of a drawing have in common
	Old      []toldFinding `json:"old,omitempty"`
	Silent   string        `json:"not_judged,omitempty"` // what no findings says nothing of
}

type toldShot struct {
	ID       string      `json:"id"`    // for requests
	Label    string      `json:"label"` // for people
	Title    string      `json:"title"`
	Notes    []string    `json:"notes,omitempty"`
	Duration plan.Number `json:"duration_s"`
	FPS      float64     `json:"fps"`                  // frames that the camera takes in a second
	Slow     plan.Number `json:"slow_factor,omitzero"` // screen time over set time, where they differ
	Pages    []string    `json:"pages"`                // their tags: another where a page is another
	Pulls    []toldPull  `json:"pulls"`
	Subjects []toldWho   `json:"subjects"`
	Silent   string      `json:"not_judged,omitempty"` // what no findings says nothing of
	Stage    *toldFrame  `json:"stage,omitempty"`      // where there is one to come
	Setup    *toldSetup  `json:"setup,omitempty"`      // of a scene
}

// A toldFrame is how much room the stage of a shot takes.
type toldFrame struct {
	Aspect   plan.Number `json:"aspect"` // width over height
	Subjects int         `json:"subjects"`
}

type toldPull struct {
	Number  int          `json:"number"`
	Start   plan.Number  `json:"start_s"`
	Land    plan.Number  `json:"land_s"`
	Name    string       `json:"name"`
	To      string       `json:"to,omitempty"` // the subject
	Figures []toldFigure `json:"figures"`
}

// A toldFinding is a finding with its place in the text and on the drawing.
type toldFinding struct {
	Code     string      `json:"code"`
	Severity string      `json:"severity"`
	Message  string      `json:"message"`
	Detail   string      `json:"detail,omitempty"`
	Cures    []string    `json:"cures,omitempty"`
	File     string      `json:"file"`  // the path
	Place    string      `json:"place"` // the file from the plan's folder, with the line
	Line     int         `json:"line"`
	Column   int         `json:"column"`
	Shot     string      `json:"shot,omitempty"`
	Pull     int         `json:"pull,omitempty"`
	Time     plan.Number `json:"t_s"`
	Number   int         `json:"number,omitempty"` // of its flag on the drawing
	Letter   string      `json:"letter,omitempty"` // what stands in that flag: the letter of its cause
}

// A toldCause is what several findings of a shot have in common, in a sentence.
type toldCause struct {
	Shot string `json:"shot"`
	Text string `json:"text"`
}

// newView puts a state into words for the page. Plans that the view before it
// told are not told anew: of a whole film, a save changes one.
func newView(s *Server, state *rebuild.State, before *view) *view {
	v := &view{state: state, id: fmt.Sprintf("%s-%d", s.run, state.Version), plans: map[*rebuild.Plan]json.RawMessage{}}
	t := told{Run: s.run, Token: s.token, Files: s.assets.tag, Version: state.Version, Picks: s.picked != nil, Plans: []json.RawMessage{}}
	for _, p := range state.Plans {
		if before != nil {
			v.plans[p] = before.plans[p]
		}
		if v.plans[p] == nil {
			v.plans[p] = mustJSON(tellPlan(p))
		}
		t.Plans = append(t.Plans, v.plans[p])
	}
	v.data = mustJSON(t)
	return v
}

// mustJSON writes what holds nothing that JSON cannot.
func mustJSON(value any) []byte {
	data, err := json.Marshal(value)
	if err != nil {
		panic(fmt.Sprintf("preview: %v", err))
	}
	return data
}

func tellPlan(p *rebuild.Plan) toldPlan {
	worst, found := lang.Worst(p.Findings)
	t := toldPlan{
		Key: p.Key, Name: draw.Clean(p.Name), Title: draw.Clean(p.Latest.Title), Version: p.Version,
		Stale: p.Stale || found && worst == lang.Error, Shots: []toldShot{},
	}
	drawn := p.Good
	if drawn == nil {
		drawn = &plan.Plan{}
	}
	for _, s := range drawn.Shots {
		t.Shots = append(t.Shots, tellShot(drawn, s, p.Sheets[s.ID]))
	}
	t.Silent = draw.Clean(moments.NotJudged(drawn.Shots...))
	if !t.Stale {
		t.Findings = tellFindings(p, p.Findings, drawn)
		groups, _ := findings.Grouped(drawn, p.Findings)
		for _, g := range groups {
			t.Causes = append(t.Causes, toldCause{g.Shot, draw.Clean(g.Says())})
		}
		return t
	}
	for _, s := range p.Latest.Shots {
		if !slices.ContainsFunc(drawn.Shots, func(d *plan.Shot) bool { return d.ID == s.ID }) {
			t.Shots = append(t.Shots, tellShot(p.Latest, s, nil))
		}
	}
	t.Findings = tellFindings(p, p.Findings, nil)
	t.Old = tellFindings(p, p.GoodFindings, drawn)
	return t
}

func tellShot(p *plan.Plan, s *plan.Shot, sheets []*rebuild.Sheet) toldShot {
	t := toldShot{ID: s.ID, Label: draw.Clean(s.ID), Title: draw.Clean(s.Title), Duration: s.Duration, FPS: fps(s), Slow: s.SlowFactor, Pages: []string{}, Pulls: []toldPull{}, Subjects: tellSubjects(s), Setup: tellSetup(p, s)}
	t.Silent = draw.Clean(moments.NotJudged(s))
	for _, note := range s.Notes {
		t.Notes = append(t.Notes, draw.Clean(note))
	}
	for _, sheet := range sheets {
		t.Pages = append(t.Pages, sheet.Tag)
	}
	if len(sheets) > 0 && stageable(s) {
		t.Stage = &toldFrame{Aspect: plan.Number(s.Optics.PictureW() / s.Optics.SensorH), Subjects: len(s.Subjects)}
	}
	if !finite(s.Duration) {
		t.Duration = 0
	}
	for _, p := range s.Pulls {
		if finite(p.Start) && finite(p.Land) {
			name, figures := tellFigures(s, p)
			t.Pulls = append(t.Pulls, toldPull{Number: p.Number, Start: p.Start, Land: p.Land, Name: name, To: draw.Clean(p.To), Figures: figures})
		}
	}
	return t
}

// perSecond returns the frames that the camera takes in a second, as a fraction.
func perSecond(s *plan.Shot) (num, den int64) {
	at := s.Speed()
	if !at.Off() {
		return s.Rate.Exact()
	}
	const thousandths = 1000
	return int64(math.Round(at.Shoots * thousandths)), thousandths
}

// fps returns the frames of a second.
func fps(s *plan.Shot) float64 {
	return s.Speed().PerSecond()
}

func finite(n plan.Number) bool { return n.Known() && !n.IsInf() }

// tellFindings puts findings of a plan into words; drawn is what the drawings show of
// them, nil where they show others.
func tellFindings(p *rebuild.Plan, list []lang.Diagnostic, drawn *plan.Plan) []toldFinding {
	all := make([]toldFinding, len(list))
	for i, d := range list {
		t := toldFinding{
			Code: d.Code, Severity: d.Severity.String(), Message: draw.Clean(d.Message), Detail: draw.Clean(d.Detail),
			File: draw.Clean(d.Range.File), Place: placeOf(p, d.Range), Line: d.Range.Start.Line, Column: d.Range.Start.Column,
			Shot: d.Shot, Pull: d.Pull, Time: plan.Number(max(d.Time, 0)),
		}
		if !finite(t.Time) {
			t.Time = 0
		}
		for _, c := range d.Cures {
			t.Cures = append(t.Cures, draw.Clean(c.Says()))
		}
		if drawn != nil {
			t.Number, t.Letter = flagOf(d, drawn)
		}
		all[i] = t
	}
	return all
}

// placeOf returns where in the text a finding lies, for people: the file as
// seen from the plan, and the line.
func placeOf(p *rebuild.Plan, at lang.Range) string {
	file := at.File
	if near, err := filepath.Rel(filepath.Dir(p.Path), file); err == nil {
		file = filepath.ToSlash(near)
	}
	return fmt.Sprintf("%s:%d", draw.Clean(file), at.Start.Line)
}

// flagOf returns the number of a finding's flag on the drawing of its shot, and the letter
// of its cause; 0 and "" if it has none.
func flagOf(d lang.Diagnostic, drawn *plan.Plan) (number int, letter string) {
	for _, s := range drawn.Shots {
		if s.ID != d.Shot {
			continue
		}
		for _, f := range s.Flags {
			if f.Code == d.Code && f.Text == d.Message && f.Pull == d.Pull && f.Time == max(d.Time, 0) {
				return f.Number, f.Cause
			}
		}
	}
	return 0, ""
}
