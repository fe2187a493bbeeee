package plan

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pullscore/lang/timecode"
)

// cutShots draws a shot at any rate that the cut shows in up to five pieces, of any
// speed, which may overlap in shot time and lie apart in the record.
func cutShots(t *rapid.T) *Shot {
	rates := timecode.Rates()
	rate := rates[rapid.IntRange(0, len(rates)-1).Draw(t, "rate")]
	at := timecode.SpeedOf(rate, rapid.SampledFrom([]float64{0, 48, 100}).Draw(t, "shoots"))
	s := &Shot{Rate: rate, BeginsAt: "set"}
	if at.Off() {
		s.Shoots, s.SlowFactor = Number(at.Shoots), Number(at.Factor())
	}
	record := rapid.Int64Range(0, 5000).Draw(t, "record")
	for i := range rapid.IntRange(1, 5).Draw(t, "pieces") {
		record += rapid.Int64Range(0, 40).Draw(t, "gap")
		p := Piece{
			Number: i + 1, In: record, Out: record + rapid.Int64Range(1, 200).Draw(t, "frames"),
			Source: rapid.Int64Range(10_000, 10_400).Draw(t, "source"), Main: true,
			Speed: Number(rapid.SampledFrom([]float64{1, 1, 1, 2, 0.5, 0.75, -1, -2, 0}).Draw(t, "speed")),
		}
		p.Begins = at.Of(float64(p.Source - 10_000))
		p.From, p.To = Number(min(p.Begins, p.End(at))), Number(max(p.Begins, p.End(at)))
		record = p.Out
		s.Pieces = append(s.Pieces, p)
	}
	return s
}

// The time that a frame of the record shows is in the cut, and the record has it at
// that frame, or at one that shows the same frame of the source.
func TestThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := cutShots(t)
		p := s.Pieces[rapid.IntRange(0, len(s.Pieces)-1).Draw(t, "piece")]
		frame := rapid.Int64Range(p.In, p.Out-1).Draw(t, "frame")
		when, ok := s.ShotTime(frame)
		if !ok {
			t.Fatalf("frame %d shows nothing", frame)
		}
		if source, ok := s.SourceAt(when); !ok || math.Abs(float64(source-p.Source)-float64(frame-p.In)*float64(p.Speed)) > 0.5+1e-6 {
			t.Fatalf("at %v the source is %d", when, source)
		}
		all := s.RecordsAt(when)
		if p.Speed != 0 && !slices.Contains(all, frame) {
			t.Fatalf("frame %d shows %v s, which is at %v", frame, when, all)
		}
		first, ok := s.RecordAt(when)
		if !ok || first != all[0] || !slices.IsSorted(all) {
			t.Fatalf("first at %d of %v", first, all)
		}
		if state, n := s.Presence(when, when); state != Whole || n != 1 {
			t.Fatalf("%v s is %s", when, state)
		}
		if got := p.ShotTime(float64(frame), s.Speed()); got != when {
			t.Fatalf("frame %d shows %v s in its piece and %v s in the shot", frame, got, when)
		}
	})
}

// How much of a stretch is shown is what counting frame by frame gives.
func TestPresence(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := cutShots(t)
		s.Shoots, s.SlowFactor = 0, 0
		for i := range s.Pieces { // whole frames, so that they can be counted
			p := &s.Pieces[i]
			p.Speed, p.Begins = 1, s.Rate.Seconds(p.Source-10_000)
			p.From, p.To = Number(p.Begins), Number(p.End(s.Speed()))
		}
		start := rapid.Int64Range(-20, 500).Draw(t, "start")
		long := rapid.Int64Range(1, 300).Draw(t, "frames")
		seen := int64(0)
		for n := start; n < start+long; n++ {
			if slices.ContainsFunc(s.Pieces, func(p Piece) bool { return p.Covers(s.Rate.Seconds(n)) }) {
				seen++
			}
		}
		want := map[bool]string{true: Whole, false: Part}[seen == long]
		if seen == 0 {
			want = Removed
		}
		if state, n := s.Presence(s.Rate.Seconds(start), s.Rate.Seconds(start+long)); state != want || n != seen {
			t.Fatalf("%s, %d frames; by count %s, %d", state, n, want, seen)
		}
	})
}

// A moment on the end of a piece is called by that end where nothing else shows it, and
// a time that is not shown has no record and yet a source.
func TestEdgesOfPieces(t *testing.T) {
	s := &Shot{BeginsAt: "set", Begins: 100, Pieces: []Piece{
		{Number: 1, In: 100, Out: 148, Source: 1000, Speed: 1, From: 0, To: 2, Main: true},
		{Number: 2, In: 148, Out: 172, Source: 1096, Speed: 1, From: 4, To: 5, Begins: 4, Main: true},
	}}
	for when, want := range map[float64]int64{0: 100, 1: 124, 2: 148, 3: -1, 4: 148, 4.5: 160, 5: 172, -1: -1, 6: -1} {
		n, ok := s.RecordAt(when)
		if ok != (want >= 0) || ok && n != want {
			t.Errorf("%v s is at %d, %v", when, n, ok)
		}
		if source, ok := s.SourceAt(when); !ok || source != 1000+int64(24*when) {
			t.Errorf("%v s is source %d", when, source)
		}
	}
	if got := s.Timecode(3); got != "" {
		t.Errorf("3 s is at %s", got)
	}
	if c := s.InCut(1.5, 4.5, false); c.State != Part || c.Frames != 24 || c.StartRecord != "00:00:05:16" || c.LandRecord != "00:00:06:16" {
		t.Errorf("%+v", c)
	}
	if c := s.InCut(0, 1, true); !c.IsRemoved() || c.StartRecord != "" || c.StartSource != "00:00:41:16" {
		t.Errorf("%+v", c)
	}
}
