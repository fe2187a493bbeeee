// The focus curve as OpenTrackIO 1.0.1 (SMPTE RIS on-set virtual production):
// one JSON sample a frame, one a line.

package export

import (
	"bufio"
	"crypto/sha1"
	"encoding/json"
	"fmt"
	"io"
	"math"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
)

// A sample is one frame. The form has no number for infinity: focusDistance is
// then left out, and encoders.focus is 0. It does not say which plane focus
// distances are from, so the notes do.
type sample struct {
	Protocol     protocol `json:"protocol"`
	SourceID     string   `json:"sourceId"`
	SourceNumber int      `json:"sourceNumber"`
	SampleID     string   `json:"sampleId"`
	Static       *static  `json:"static,omitempty"` // of the first sample
	Tracker      tracker  `json:"tracker"`
	Timing       timing   `json:"timing"`
	Lens         lens     `json:"lens"`

	Transforms []transform `json:"transforms,omitempty"` // of a camera that turns, leaves its axis, or has a place
}

// A transform is where the sensor mark of the camera is, in metres from the zero point of
// its scene or from where it starts, and how it is turned. The axes of the form are those
// of our floor: x to the right, y upstage or where the camera looks at the start, z up,
// right-handed. It turns about z, then about its own x, in degrees. About z, left is
// positive.
type transform struct {
	ID          string `json:"id"`
	Translation struct {
		X float64 `json:"x"`
		Y float64 `json:"y"`
		Z float64 `json:"z"`
	} `json:"translation"`
	Rotation struct {
		Pan  float64 `json:"pan"`
		Tilt float64 `json:"tilt"`
		Roll float64 `json:"roll"`
	} `json:"rotation"`
}

// transformsOf returns the one transform of a shot whose camera turns, leaves its axis, or
// has a place, at t; nil of any other.
func transformsOf(s *plan.Shot, t float64) []transform {
	if s.Optics.Rig == nil && !hasPlace(s) {
		return nil
	}
	p, one := s.Stands(t), transform{ID: "Camera"}
	one.Translation.X, one.Translation.Y, one.Translation.Z = rounded(p.X), rounded(p.Y), rounded(p.Z)
	one.Rotation.Pan, one.Rotation.Tilt = rounded(-p.Pan), rounded(p.Tilt)
	return []transform{one}
}

type protocol struct {
	Name    string `json:"name"`
	Version [3]int `json:"version"`
}

type static struct {
	Camera staticCamera `json:"camera"`
	Lens   staticLens   `json:"lens"`
}

type staticCamera struct {
	Sensor size   `json:"activeSensorPhysicalDimensions"` // mm
	Label  string `json:"label,omitempty"`

	FrameRate map[string]int64 `json:"captureFrameRate,omitempty"` // where it is not that of the film
}

type size struct {
	Height float64 `json:"height"`
	Width  float64 `json:"width"`
}

type staticLens struct {
	Model string `json:"model,omitempty"`
}

type tracker struct {
	Notes     string `json:"notes"`
	Slate     string `json:"slate"`
	Recording bool   `json:"recording"`
}

type timing struct {
	Mode       string           `json:"mode"`
	SampleRate map[string]int64 `json:"sampleRate"`
	Sequence   int64            `json:"sequenceNumber"`
	Timecode   label            `json:"timecode"`
}

type label struct {
	Hours     int64            `json:"hours"`
	Minutes   int64            `json:"minutes"`
	Seconds   int64            `json:"seconds"`
	Frames    int64            `json:"frames"`
	FrameRate map[string]int64 `json:"frameRate"`
	DropFrame bool             `json:"dropFrame"`
}

type lens struct {
	FocusDistance float64   `json:"focusDistance,omitempty"` // m
	FStop         float64   `json:"fStop"`
	TStop         float64   `json:"tStop,omitempty"`
	Focal         float64   `json:"pinholeFocalLength"` // mm
	Encoders      *encoders `json:"encoders,omitempty"`
}

type encoders struct {
	Focus float64 `json:"focus"`
}

// notesOn returns what the form has no field for. Its schema allows no fields of our own,
// and at most 1023 letters here.
func notesOn(s *plan.Shot) string {
	text := "Planned, not measured. focusDistance is from the sensor plane."
	if ring := moments.Provenance(s); ring != "" {
		text += " " + ring + "."
	}
	const most = 1023
	if letters := []rune(text); len(letters) > most {
		text = string(letters[:most])
	}
	return text
}

// space begins the name of every identifier, so that the same frame of the same
// plan always has the same one and no other program's has it.
const space = "pullscore:focus-curve:"

// urn returns the identifier of a name: RFC 9562, version 5, with the name space
// written in front. A library for it would cost every start of the program more
// than these lines.
func urn(parts ...any) string {
	id := sha1.Sum(append([]byte(space), fmt.Append(nil, parts...)...))
	id[6] = id[6]&0x0f | 5<<4 // the version
	id[8] = id[8]&0x3f | 1<<7 // the variant
	return fmt.Sprintf("urn:uuid:%x-%x-%x-%x-%x", id[:4], id[4:6], id[6:8], id[8:10], id[10:16])
}

// OpenTrackIO writes the samples of a shot.
func OpenTrackIO(w io.Writer, s *plan.Shot) error { return samplesOf(w, s, Frames(s)) }

// samplesInCut is OpenTrackIO of what the cut shows.
func samplesInCut(w io.Writer, s *plan.Shot) error { return samplesOf(w, s, FramesInCut(s)) }

func samplesOf(w io.Writer, s *plan.Shot, frames []Frame) error {
	out := bufio.NewWriter(w)
	lines := json.NewEncoder(out)
	lines.SetEscapeHTML(false)
	source, notes := urn(s.PlanName, "\n", s.ID), notesOn(s)
	for i, f := range frames {
		one := sample{
			Protocol: protocol{"OpenTrackIO", [3]int{1, 0, 1}},
			SourceID: source, SourceNumber: 1, SampleID: urn(source, int64(i)),
			Tracker: tracker{Notes: notes, Slate: s.ID},
			Timing:  timing{"external", rate(s.Rate), int64(i), labelOf(s, f)},
			Lens:    lensOf(s, f), Transforms: transformsOf(s, f.Time),
		}
		if i == 0 {
			one.Static = &static{
				staticCamera{size{rounded(s.Optics.SensorH * 1000), rounded(s.Optics.SensorW * 1000)}, s.Camera, captured(s)},
				staticLens{s.Lens},
			}
		}
		if err := lines.Encode(one); err != nil {
			return fmt.Errorf("frame %d: %w", f.Number, err)
		}
	}
	return out.Flush()
}

// captured returns the frames that the camera takes in a second, as a fraction; nil if
// those are the frames of the film.
func captured(s *plan.Shot) map[string]int64 {
	at := s.Speed()
	if !at.Off() {
		return nil
	}
	const thousandths = 1000
	num, den := int64(math.Round(at.Shoots*thousandths)), int64(thousandths)
	for _, prime := range []int64{2, 2, 2, 5, 5, 5} {
		if num%prime == 0 && den%prime == 0 {
			num, den = num/prime, den/prime
		}
	}
	return map[string]int64{"num": num, "denom": den}
}

func labelOf(s *plan.Shot, f Frame) label {
	l := label{FrameRate: rate(s.Rate), DropFrame: s.Rate.Drop()}
	text := s.Rate.Format(f.Label)
	for i, part := range []*int64{&l.Hours, &l.Minutes, &l.Seconds, &l.Frames} {
		*part = int64(text[3*i]-'0')*10 + int64(text[3*i+1]-'0') // HH:MM:SS:FF
	}
	return l
}

func lensOf(s *plan.Shot, f Frame) lens {
	l := lens{FStop: rounded(f.Stop), Focal: rounded(f.Focal * 1000)}
	if !math.IsNaN(f.Sensor) && !math.IsInf(f.Sensor, 0) {
		l.FocusDistance = rounded(f.Sensor)
	}
	if !math.IsNaN(f.T) {
		l.TStop = rounded(f.T)
	}
	if ring := s.Optics.Ring; ring != nil && !math.IsNaN(f.Ring) {
		l.Encoders = &encoders{rounded(1 - f.Ring/ring.Throw())} // 0 is infinity
	}
	return l
}
