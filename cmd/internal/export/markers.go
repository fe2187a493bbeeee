// Markers for the cutting room: where each move of the focus starts and lands,
// where the cues fall, and where a camera that turns starts and lands.

package export

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/lang/edl"
	"pullscore/lang/otio"
	"pullscore/lang/timecode"
)

// A mark is one marker.
type mark struct {
	at     int64 // frames in the record
	colour string
	text   string
}

// The colours are names that both forms know.
const (
	startColour = "CYAN"
	landColour  = "GREEN"
	cueColour   = "YELLOW"

	cameraStartColour = "MAGENTA"
	cameraLandColour  = "BLUE"
)

// A moment is a moment of a shot that is worth a marker.
type moment struct {
	t      float64 // seconds from the shot's start
	colour string
	text   string
	inCut  *plan.InCut // of what it is a moment; nil where nobody says
	start  bool        // of something that takes time
}

// momentsOf returns the moments of a shot.
func momentsOf(s *plan.Shot) (list []moment) {
	for _, c := range s.Cues {
		list = append(list, moment{t: float64(c.T), colour: cueColour, text: c.Name, inCut: c.InCut})
	}
	for _, p := range s.Pulls {
		to, start, land := cmp.Or(p.To, p.Target), float64(p.Start), float64(p.Land)
		if p.Kind == "follow" {
			list = append(list, moment{start, startColour, fmt.Sprintf("%d follow %s", p.Number, to), p.InCut, true})
			continue
		}
		list = append(list, moment{start, startColour, fmt.Sprintf("%d rack to %s", p.Number, to), p.InCut, true},
			moment{land, landColour, fmt.Sprintf("%d lands on %s", p.Number, to), p.InCut, false})
	}
	for _, m := range cameraMoves(s) {
		list = append(list, moment{t: float64(m.start), colour: cameraStartColour, text: m.starts},
			moment{t: float64(m.land), colour: cameraLandColour, text: m.lands})
	}
	return list
}

// marks returns the markers of a placed shot in the order of their time.
func (s placed) marks() (list []mark) {
	for _, m := range momentsOf(s.Shot) {
		at, before, ok := s.asPlanned(m.t)
		if s.piece != nil {
			at, before, ok = s.inPiece(m)
		}
		if !ok {
			continue
		}
		text := m.text
		if before > 0 {
			text = fmt.Sprintf("%s, %d fr before the cut", text, before)
		}
		if s.piece != nil && !strings.EqualFold(strings.TrimSpace(s.piece.Clip), s.ID) {
			text = s.ID + " " + text
		}
		list = append(list, mark{at, m.colour, text})
	}
	slices.SortStableFunc(list, func(a, b mark) int { return cmp.Compare(a.at, b.at) })
	return list
}

// asPlanned returns where a time of a shot lies that is written as the plan has it. What
// falls before the picture is marked on its first frame, so many frames late: no marker
// can lie before its clip.
func (s placed) asPlanned(t float64) (at, before int64, ok bool) {
	if at = s.Speed().Frames(t); at < 0 {
		return s.in, -at, true
	}
	return s.in + at, 0, true
}

// inPiece returns where a moment lies in the piece, if that shows it. What has started
// before the picture of it does is marked on the first frame that shows it.
func (s placed) inPiece(m moment) (at, before int64, ok bool) {
	p, speed := s.piece, s.Speed()
	if m.inCut.IsRemoved() {
		return 0, 0, false
	}
	if p.Covers(m.t) || s.PieceAt(m.t) == p { // or its end lands on it
		return min(p.RecordOf(m.t, speed), p.Out-1), 0, true
	}
	from := float64(p.From)
	if m.start && p.Speed > 0 && m.t < from && s.firstSeen(m) == p {
		return p.In, speed.Frames(from - m.t), true
	}
	return 0, 0, false
}

// firstSeen returns the piece that shows first what starts at a moment of which no
// piece shows the start itself; nil: another shows that.
func (s placed) firstSeen(m moment) *plan.Piece {
	if s.PieceAt(m.t) != nil {
		return nil
	}
	for i := range s.Pulls {
		u := s.Pulls[i]
		if u.InCut != m.inCut {
			continue
		}
		for k := range s.Pieces {
			if p := &s.Pieces[k]; p.From < u.Land && p.To > u.Start {
				return p
			}
		}
	}
	return nil
}

// EDL writes a list of the shots with a LOC line a marker: an event a piece of those
// that a list has, with the name, the reel, the source and the speed that they have there.
func EDL(w io.Writer, p *plan.Plan) error { return writeEDL(w, p, placed.marks) }

// OTIO writes a timeline of the shots with a marker for each: a clip a piece of those
// that a list has. Clips that lie over one another go on tracks of their own.
func OTIO(w io.Writer, p *plan.Plan) error { return writeOTIO(w, p, placed.marks) }

// writeEDL writes the list with the markers that marks gives for each of its events.
func writeEDL(w io.Writer, p *plan.Plan, marks func(placed) []mark) error {
	list := edl.List{Title: p.Title}
	rate := rateOf(p)
	noted := map[*plan.Shot]bool{}
	for i, s := range place(p) {
		e := edl.Event{
			Number: fmt.Sprintf("%03d", i+1), Reel: "AX", Channels: "V", Transition: "C", Clip: s.name(),
			RecordIn: s.in, RecordOut: s.out,
		}
		e.SourceIn, e.SourceOut = s.source()
		if s.piece != nil {
			e.Reel = cmp.Or(s.piece.Reel, e.Reel)
		}
		if v := s.speed(); v != 1 {
			num, den := rate.Exact()
			e.Speed = &edl.Speed{Reel: e.Reel, FPS: v * float64(num) / float64(den), Source: e.SourceIn}
		}
		if text := moments.Provenance(s.Shot); text != "" && !noted[s.Shot] {
			e.Notes, noted[s.Shot] = []string{text}, true
		}
		for _, m := range marks(s) {
			e.Markers = append(e.Markers, edl.Marker{At: m.at, Colour: m.colour, Text: m.text})
		}
		list.Events = append(list.Events, e)
	}
	return edl.Write(w, &list, rate)
}

// writeOTIO writes the timeline with the markers that marks gives for each of its clips.
func writeOTIO(w io.Writer, p *plan.Plan, marks func(placed) []mark) error {
	shots := place(p)
	t := otio.Timeline{Name: p.Title, Rate: rateOf(p), HasStart: true}
	if len(shots) > 0 {
		t.Start = shots[0].in
	}
	for _, s := range shots {
		begins, _ := s.source()
		item := otio.Item{Kind: "Clip", Name: s.name(), Record: s.in - t.Start, Frames: s.out - s.in, Source: begins}
		if v := s.speed(); v != 1 {
			item.Source, item.Speed = s.piece.Source, &v
		}
		item.Reel = s.reel()
		item.Metadata = s.metadata()
		for _, m := range marks(s) {
			item.Markers = append(item.Markers, otio.Marker{Name: m.text, Colour: m.colour, Start: begins + m.at - s.in})
		}
		track := freeTrack(&t, item.Record)
		track.Items = append(track.Items, item)
		track.Frames = item.Record + item.Frames
	}
	return otio.Write(w, &t)
}

// metadata returns what a clip says of its shot besides markers: what its ring rests on,
// and what time of its scene it has, in seconds: of a piece as much as it shows.
func (s placed) metadata() map[string]any {
	data := map[string]any{}
	if text := moments.Provenance(s.Shot); text != "" {
		data["ring"] = text
	}
	if s.Staging != nil && s.Action {
		from, to := s.Covers[0], s.Covers[1]
		if s.piece != nil {
			from, to = s.Covers[0]+plan.Number(s.piece.From), s.Covers[0]+plan.Number(s.piece.To)
		}
		data["covers_s"] = [2]float64{rounded(float64(from)), rounded(float64(to))}
	}
	return data
}

// freeTrack returns the first track that is free from a record time on.
func freeTrack(t *otio.Timeline, from int64) *otio.Track {
	for i := range t.Tracks {
		if t.Tracks[i].Frames <= from {
			return &t.Tracks[i]
		}
	}
	t.Tracks = append(t.Tracks, otio.Track{Name: fmt.Sprintf("V%d", len(t.Tracks)+1), Kind: "Video"})
	return &t.Tracks[len(t.Tracks)-1]
}

func rateOf(p *plan.Plan) timecode.Rate {
	if len(p.Shots) == 0 {
		return timecode.Rate{}
	}
	return p.Shots[0].Rate
}
