package used

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/takes"
)

// What is known of how a rack looks in the cut.
const (
	Sharp   = "yes"
	Soft    = "no"
	Part    = "part"    // the cut comes before it lands
	Unknown = "unknown" // no row of the log tells
)

// A Use is one rack in one piece of the cut, and how its take landed.
type Use struct {
	Shot string `json:"shot"`
	Pull int    `json:"pull"`
	From string `json:"from,omitempty"`
	To   string `json:"to"`

	RecordIn  string `json:"record_in"`  // the first frame of the rack in the cut
	RecordOut string `json:"record_out"` // where it lands, or the cut takes it away
	Piece     int    `json:"piece"`      // of the shot, by its number
	Clip      string `json:"clip"`
	Take      string `json:"take,omitempty"` // as the cut or else the log calls it

	Logged bool          `json:"logged"`
	Log    string        `json:"log,omitempty"` // where it stands, and the line there
	Line   int           `json:"line,omitempty"`
	Landed plan.Number   `json:"landed_m,omitzero"`
	Mark   plan.Number   `json:"mark_m"`
	Error  plan.Number   `json:"error_deg,omitzero"`  // at the hand, positive past the mark
	Window plan.Interval `json:"window_deg,omitzero"` // before the mark and past it
	Beyond plan.Number   `json:"windows,omitzero"`    // the error in windows on its side: sharp up to 1
	Sharp  string        `json:"sharp"`

	Others    []string `json:"other_takes"`         // those that landed sharp, best first
	Undecided int      `json:"undecided,omitempty"` // rows of which nothing says whether they are of this take

	At       int64 `json:"-"` // RecordOut as frames
	Imperial bool  `json:"-"` // the shot is in feet and inches
}

// A Report is what a log says of a cut.
type Report struct {
	Plan  string   `json:"plan"`
	Cut   string   `json:"cut"`
	Racks []Use    `json:"racks"`
	Not   []string `json:"not_in_cut"` // the shots that the list does not have
	Gone  int      `json:"removed"`    // racks of the others that the cut does not show

	Sharp    int `json:"sharp"`
	Soft     int `json:"soft"`
	Part     int `json:"cut_before_landing"`
	Unjudged int `json:"unjudged"` // logged, and nobody knows whether it was sharp
	Unlogged int `json:"not_logged"`

	Unread int           `json:"unread_timecodes,omitempty"` // rows whose timecode is none
	Faulty int           `json:"faulty"`                     // rows that could not be used
	Faults []takes.Place `json:"faults,omitempty"`
}

// A Log is the takes of one log.
type Log struct {
	Name  string
	Takes []takes.Take
}

// A row is a take, and the log that it stands in.
type row struct {
	*takes.Take
	log string
}

// A key names a pull of the plan.
type key struct {
	shot *plan.Shot
	pull *plan.Pull
}

// Of lays the takes of logs beside the cut that a plan follows, which a list called cut
// gives.
func Of(logs []Log, p *plan.Plan, cut string) *Report {
	r := &Report{Plan: p.Title, Cut: cut, Racks: []Use{}, Not: []string{}}
	rows := r.sort(logs, takes.Plans{p})
	for _, s := range p.Shots {
		if len(s.Pieces) == 0 {
			r.Not = append(r.Not, s.ID)
			continue
		}
		for _, pull := range s.Pulls {
			if pull.Kind != "follow" {
				r.add(s, pull, rows[key{s, pull}])
			}
		}
	}
	return r
}

// sort returns the takes of each pull.
func (r *Report) sort(logs []Log, plans takes.Plans) map[key][]*row {
	rows := map[key][]*row{}
	for _, l := range logs {
		for i := range l.Takes {
			t := &l.Takes[i]
			shot, pull, ok := plans.Pull(t)
			if t.OnPage() || !ok {
				continue
			}
			rows[key{shot, pull}] = append(rows[key{shot, pull}], &row{t, l.Name})
			if _, err := shot.Rate.Parse(t.Timecode); t.Timecode != "" && err != nil {
				r.Unread++
			}
		}
	}
	return rows
}

// add adds a rack in every piece that shows it.
func (r *Report) add(s *plan.Shot, p *plan.Pull, rows []*row) {
	pieces := showing(s, p)
	if len(pieces) == 0 {
		r.Gone++
	}
	for _, piece := range pieces {
		u := useOf(&shown{s, p, piece}, rows)
		switch {
		case u.Sharp == Sharp:
			r.Sharp++
		case u.Sharp == Soft:
			r.Soft++
		case u.Sharp == Part:
			r.Part++
		case u.Logged:
			r.Unjudged++
		default:
			r.Unlogged++
		}
		r.Racks = append(r.Racks, u)
	}
}

// showing returns the pieces that show the landing of a rack, and where none does the
// first that shows anything of it.
func showing(s *plan.Shot, p *plan.Pull) (list []*plan.Piece) {
	if p.InCut.IsRemoved() {
		return nil
	}
	land := float64(p.Land)
	for i := range s.Pieces {
		if s.Pieces[i].Covers(land) {
			list = append(list, &s.Pieces[i])
		}
	}
	if end := s.PieceAt(land); len(list) == 0 && end != nil {
		return []*plan.Piece{end}
	}
	for i := 0; len(list) == 0 && i < len(s.Pieces); i++ {
		if piece := &s.Pieces[i]; float64(piece.From) < land && float64(piece.To) > float64(p.Start) {
			list = append(list, piece)
		}
	}
	return list
}

// useOf says how a rack in a piece looks by the rows of the log.
func useOf(s *shown, rows []*row) Use {
	p := s.pull
	u := Use{
		Shot: s.shot.ID, Pull: p.Number, From: p.From, To: cmp.Or(p.To, p.Target), Piece: s.piece.Number, Clip: s.piece.Clip, Take: s.piece.Take,
		Mark: p.ToM, Landed: plan.None(), Error: plan.None(), Window: plan.NoInterval(), Beyond: plan.None(), Sharp: Unknown, Imperial: s.shot.Imperial,
	}
	from, to := s.record()
	u.At, u.RecordIn, u.RecordOut = to, s.shot.Rate.Format(from), s.shot.Rate.Format(to)
	if asks := &p.Asks; !math.IsNaN(asks.Travel) {
		u.Window = plan.Interval{plan.Number(asks.Lo), plan.Number(asks.Hi)}
	}
	t := s.pick(rows)
	u.Others, u.Undecided = s.others(rows, t)
	if t != nil {
		u.fill(s, t)
	}
	if s.closed(t) {
		u.Sharp = Part
	}
	return u
}

// fill writes how a take landed.
func (u *Use) fill(s *shown, t *row) {
	u.Logged, u.Log, u.Line, u.Take = true, t.log, t.Line, cmp.Or(u.Take, t.OnSet)
	switch t.Hit {
	case takes.Sharp:
		u.Sharp = Sharp
	case takes.Missed:
		u.Sharp = Soft
	}
	if t.Unmeasured {
		return
	}
	u.Error, u.Beyond = plan.Number(t.Error), plan.Number(beyond(t))
	if s.shot.Optics.Ring != nil && s.pull.ToDeg.Known() {
		if m, err := takes.ParseLength(takes.LandedAt(s.shot, s.pull, t.Error), "m"); err == nil {
			u.Landed = plan.Number(m)
		}
	}
}

// beyond returns the error of a take in windows on its side of the mark; NaN where it is
// not known.
func beyond(t *row) float64 {
	edge := t.Window[1]
	if t.Error < 0 {
		edge = t.Window[0]
	}
	if t.Unmeasured || edge == 0 {
		return math.NaN()
	}
	return t.Error / edge
}

// pick returns the row of the take that the piece shows; nil where none is known to be.
// Of several it is the one that landed nearest to the plan, and of those the last.
func (s *shown) pick(rows []*row) (best *row) {
	far := func(t *row) float64 {
		n, err := s.shot.Rate.Parse(t.Timecode)
		if t.Timecode == "" || err != nil {
			return math.Inf(1)
		}
		return s.late(n)
	}
	for _, t := range rows {
		if s.verdict(t) == same && (best == nil || far(t) <= far(best)) {
			best = t
		}
	}
	return best
}

// record returns the first frame of the rack that the piece shows, and that in which it
// lands or the piece ends.
func (s *shown) record() (from, to int64) {
	p, at := s.piece, s.shot.Speed()
	ends := []int64{
		p.RecordOf(max(float64(s.pull.Start), float64(p.From)), at),
		p.RecordOf(min(float64(s.pull.Land), float64(p.To)), at),
	}
	slices.Sort(ends)
	return ends[0], ends[1]
}
