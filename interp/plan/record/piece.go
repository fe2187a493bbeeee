// Pieces: where the times of a shot lie in the cut and on the camera's own clock.
//
// What is hard. A shot that has been cut has three clocks. Shot time is that of the
// set: seconds from the first frame of it that the cut uses. Source is the timecode
// that the camera gave to its frames. Record is the timecode of the cut. A cut may
// take something out of a shot, show it twice, faster, backwards or as a still, and go
// on in another take. So a frame of the record shows one time of the shot, but a time
// of the shot may be shown never, once or several times, and no single number leads
// from one to the other.
//
// What is done. Every event of the list that shows the shot is a piece, and a piece is
// a straight line: with F frames shot a second, the frame r of the record shows
//
//	t = Begins + (r - In) Speed / F
//
// Begins says it all: where the events of one take lie to each other comes from their
// source, and where another take lies to them is settled once, before this. A time is
// in the record where a piece covers it, first of all in the piece that the audience
// sees first. A piece covers its first frame and not its end, so that pieces that go on
// without a jump share no time; one that runs backwards is turned round. A still covers
// one instant. A moment that falls on the end of a piece and that no other covers is
// still called by the end of that piece: a rack may land with the last frame.
//
// What was rejected. To count record times from the first frame of the shot, which is
// wrong behind the first part that is taken out. To keep the record time of everything
// in place of its shot time: hands and lenses work on the clock of the set, also in
// what is cut away.

package record

import (
	"math"

	"pullscore/interp/plan/figure"
	"pullscore/lang/timecode"
)

// A Piece is an event of the cut that shows a part of a shot. Neighbours that go on
// without a jump are one piece.
type Piece struct {
	Number    int           `json:"number"`         // from 1, in the order of the record
	Take      string        `json:"take,omitempty"` // "" where nothing tells takes apart
	Clip      string        `json:"clip"`           // its name in the list
	Reel      string        `json:"reel,omitempty"`
	RecordIn  string        `json:"record_in"` // the labels of In, Out and Source
	RecordOut string        `json:"record_out"`
	SourceIn  string        `json:"source_in"`
	From      figure.Number `json:"from_s"` // the part of the shot, seconds: From is never above To
	To        figure.Number `json:"to_s"`
	Speed     figure.Number `json:"speed"` // frames of the source in one of the record; below 0 backwards, 0 a still
	Line      int           `json:"line"`  // of the list

	File    string  `json:"-"` // the list
	In, Out int64   `json:"-"` // in the record, frames; Out is the first that is no longer there
	Source  int64   `json:"-"` // its first frame in the source
	Begins  float64 `json:"-"` // the shot time of its first frame, seconds
	// TakeFrom and TakeTo are the first frame of the take in the source and the first behind
	// it, where a list of clips says how long the take is; else both are 0.
	TakeFrom, TakeTo int64 `json:"-"`
	Main             bool  `json:"-"` // it is of the main take, by which shot time counts
}

// slack is how near a time may lie to the edge of a piece to be on it, seconds. Times
// of frames come from fractions.
const slack = 1e-6

// Frames returns how long the piece is in the record.
func (p *Piece) Frames() int64 { return p.Out - p.In }

// End returns the shot time at which the piece ends, in seconds: where it runs
// backwards, that is the earliest.
func (p *Piece) End(at timecode.Speed) float64 {
	return p.Begins + at.Of(float64(p.Frames())*float64(p.Speed))
}

// ShotTime returns the time of the shot that a frame of the record shows in this piece,
// in seconds. Outside of the piece it goes on as the piece does.
func (p *Piece) ShotTime(record float64, at timecode.Speed) float64 {
	return p.Begins + at.Of((record-float64(p.In))*float64(p.Speed))
}

// Covers reports whether the piece shows a time of the shot.
func (p *Piece) Covers(t float64) bool {
	from, to := float64(p.From), float64(p.To)
	switch {
	case p.Speed > 0:
		return t >= from-slack && t < to-slack
	case p.Speed < 0:
		return t > from+slack && t <= to+slack
	}
	return math.Abs(t-from) <= slack
}

// EndsAt reports whether a time of the shot is the end of the piece.
func (p *Piece) EndsAt(t float64, at timecode.Speed) bool { return math.Abs(t-p.End(at)) <= slack }

// RecordOf returns the frame of the record nearest to a time that the piece shows.
func (p *Piece) RecordOf(t float64, at timecode.Speed) int64 {
	switch p.Speed {
	case 0:
		return p.In
	case 1:
		return p.In + at.Frames(t) - at.Frames(p.Begins)
	}
	const half = 0.5 + 1e-6 // a half comes out of fractions, and goes up
	return p.In + int64(math.Floor((t-p.Begins)*at.PerSecond()/float64(p.Speed)+half))
}

// SourceOf returns the frame of the source nearest to a time of the shot, in the take
// that the piece is of.
func (p *Piece) SourceOf(t float64, at timecode.Speed) int64 {
	return p.Source + at.Frames(t) - at.Frames(p.Begins)
}

// Joined reports whether the next piece of the record goes on where this one ends.
func (p *Piece) Joined(next *Piece) bool { return p.Out == next.In }
