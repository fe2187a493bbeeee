// Tracks read back by a decoder of another make, and their cues found by where
// sounds begin.

package export

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/go-audio/wav"
	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/lang/testing/cases"
)

// aShot has moves at these times, from starts to landings.
func aShot(moves ...[2]float64) *plan.Shot {
	s := &plan.Shot{ID: "7", Duration: 1}
	for i, m := range moves {
		s.Pulls = append(s.Pulls, &plan.Pull{
			Number: i + 1, Kind: "rack", Target: "DÖRA", Profile: "smooth", Start: plan.Number(m[0]), Land: plan.Number(m[1]),
		})
		s.Duration = max(s.Duration, plan.Number(m[1]))
	}
	return s
}

// decoded is a track as the other decoder has it.
func decoded(t require, s *plan.Shot, opt ClickOptions) (*Click, []int, *wav.Metadata) {
	t.Helper()
	track, err := NewClick(s, opt)
	if err != nil {
		t.Fatalf("%v", err)
	}
	var b bytes.Buffer
	if err := track.WriteWAV(&b); err != nil {
		t.Fatalf("%v", err)
	}
	d := wav.NewDecoder(bytes.NewReader(b.Bytes()))
	buf, err := d.FullPCMBuffer()
	if err != nil {
		t.Fatalf("%v", err)
	}
	if d.SampleRate != 48_000 || d.BitDepth != 16 || d.NumChans != 1 || d.WavAudioFormat != 1 {
		t.Fatalf("%d Hz, %d bits, %d channels, format %d", d.SampleRate, d.BitDepth, d.NumChans, d.WavAudioFormat)
	}
	m := wav.NewDecoder(bytes.NewReader(b.Bytes()))
	m.ReadMetadata()
	if m.Metadata == nil {
		t.Fatalf("no metadata")
	}
	return track, buf.Data, m.Metadata
}

type require interface {
	Helper()
	Fatalf(format string, args ...any)
}

// onsets are the samples at which the sound rises out of at least 3 ms of
// silence.
func onsets(samples []int) []int {
	const floor, quiet = 60, SampleRate * 3 / 1000
	var list []int
	last := -quiet - 1
	for i, v := range samples {
		if v < -floor || v > floor {
			if i-last > quiet {
				list = append(list, i)
			}
			last = i
		}
	}
	return list
}

// near reports whether a position is within a sample of one of a list.
func near(list []int, at float64) bool {
	for _, v := range list {
		if math.Abs(float64(v)-at) <= 1 {
			return true
		}
	}
	return false
}

// Each case renders seconds of sound. After a change of the click try more,
// -rapid.checks=500.
func TestCuesAreWhereTheySound(t *testing.T) {
	cases.Check(t, 40, func(t *rapid.T) {
		opt := ClickOptions{
			Beat:  rapid.Float64Range(0.3, 1.2).Draw(t, "beat"),
			Speed: rapid.Float64Range(0.5, 1).Draw(t, "speed"),
			Loop:  rapid.IntRange(1, 2).Draw(t, "loop"),
		}
		var moves [][2]float64
		at := 0.0
		for range rapid.IntRange(0, 3).Draw(t, "moves") {
			start := at + rapid.Float64Range(0.3, 1.5).Draw(t, "wait")
			at = start + rapid.Float64Range(0.3, 1.5).Draw(t, "over")
			moves = append(moves, [2]float64{start, at})
		}
		track, samples, meta := decoded(t, aShot(moves...), opt)
		if len(samples) != len(track.Samples) || len(samples)%opt.Loop != 0 {
			t.Fatalf("%d samples, written %d in %d passes", len(samples), len(track.Samples), opt.Loop)
		}
		heard, pass := onsets(samples), len(samples)/opt.Loop
		for n := range opt.Loop {
			place := func(s float64) float64 { return float64(n*pass) + (4*opt.Beat+s)/opt.Speed*48_000 }
			for _, m := range moves {
				for _, s := range m {
					if !near(heard, place(s)) {
						t.Fatalf("nothing begins at %.3f s of the shot, sample %.1f; heard %v", s, place(s), heard)
					}
				}
			}
			for i := range 4 { // the count-in
				if !near(heard, place(float64(i-4)*opt.Beat)) {
					t.Fatalf("beat %d of the count-in is not heard: %v", i, heard)
				}
			}
		}
		if len(meta.CuePoints) != len(track.Cues) || len(track.Cues) != opt.Loop*(2+2*len(moves)) {
			t.Fatalf("%d cues read, %d written, %d moves", len(meta.CuePoints), len(track.Cues), len(moves))
		}
		for i, c := range meta.CuePoints {
			if int(c.Position) != track.Cues[i].Position || int(c.SampleOffset) != track.Cues[i].Position || string(c.DataChunkID[:]) != "data" {
				t.Fatalf("cue %+v, written %+v", c, track.Cues[i])
			}
			if strings.HasSuffix(track.Cues[i].Label, "lands") && !near(heard, float64(c.Position)) {
				t.Fatalf("%s marks sample %d, where nothing begins", track.Cues[i].Label, c.Position)
			}
		}
	})
}

// Half the speed takes twice as long, and the tone of a move goes through the
// same pitches.
func TestSlowKeepsPitch(t *testing.T) {
	s := aShot([2]float64{0.5, 2.5})
	full, _, _ := decoded(t, s, ClickOptions{Beat: 3}) // no tick within the move
	slow, _, _ := decoded(t, s, ClickOptions{Beat: 3, Speed: 0.5})
	if len(slow.Samples) != 2*len(full.Samples) {
		t.Errorf("%d samples, at half the speed %d", len(full.Samples), len(slow.Samples))
	}
	for _, share := range []float64{0.3, 0.5, 0.8} { // of the move's time
		want := lower * math.Exp2(plan.Ease(share, true))
		for speed, track := range map[float64]*Click{1: full, 0.5: slow} {
			at := int((4*3 + 0.5 + 2*share) / speed * SampleRate)
			if got := pitch(track.Samples[at-SampleRate/50 : at+SampleRate/50]); math.Abs(got/want-1) > 0.06 {
				t.Errorf("at speed %v, %.0f %% of the way, the pitch is %.0f Hz, want %.0f", speed, 100*share, got, want)
			}
		}
	}
}

// pitch counts how often a tone rises through zero.
func pitch(samples []int16) float64 {
	first, last, n := -1, 0, -1
	for i := 1; i < len(samples); i++ {
		if samples[i-1] < 0 && samples[i] >= 0 {
			if first < 0 {
				first = i
			}
			last = i
			n++
		}
	}
	return float64(n) / float64(last-first) * SampleRate
}

// A track begins with its count-in and ends on a beat, so that what plays it
// in a circle keeps time.
func TestLengthIsWholeBeats(t *testing.T) {
	track, _, _ := decoded(t, aShot([2]float64{0.2, 1.31}), ClickOptions{Beat: 0.5, Loop: 2})
	if want := 2 * 8 * SampleRate / 2; len(track.Samples) != want { // 4 beats, and 1.31 s with its last sound
		t.Errorf("%d samples, want %d", len(track.Samples), want)
	}
	if c := track.Cues[0]; c.Position != 0 || c.Label != "pass 1: count-in" {
		t.Errorf("the first cue is %+v", c)
	}
}

func TestLabels(t *testing.T) {
	track, err := NewClick(aShot([2]float64{0.5, 1}), ClickOptions{})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := track.WriteWAV(&b); err != nil {
		t.Fatal(err)
	}
	for _, label := range []string{"count-in\x00", "shot 7\x00", "1 to DÖRA starts\x00", "1 to DÖRA lands\x00"} {
		if !bytes.Contains(b.Bytes(), []byte(label)) {
			t.Errorf("no label %q", label)
		}
	}
	if size := int(b.Bytes()[4]) | int(b.Bytes()[5])<<8 | int(b.Bytes()[6])<<16; size != b.Len()-8 {
		t.Errorf("the file says %d bytes, and has %d", size, b.Len()-8)
	}
}

// Shots that no track can be made of are errors; odd moves are left out of the
// sound and break nothing.
func TestHostileShots(t *testing.T) {
	for _, d := range []float64{math.NaN(), math.Inf(1), -1, 1e5} {
		s := aShot()
		s.Duration = plan.Number(d)
		if _, err := NewClick(s, ClickOptions{}); err == nil {
			t.Errorf("a shot of %v s has a track", d)
		}
	}
	for _, m := range [][2]float64{{-9, -8}, {-9, 0.5}, {0.5, 0.5}, {0.9, 0.2}, {math.NaN(), 1}, {0.5, math.Inf(1)}, {1e9, 2e9}} {
		s := aShot()
		s.Pulls = aShot(m).Pulls
		if _, err := NewClick(s, ClickOptions{}); err != nil {
			t.Errorf("%v: %v", m, err)
		}
	}
}
