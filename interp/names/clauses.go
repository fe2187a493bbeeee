// Clauses: what statements of one kind come to together.

package names

import (
	"slices"

	"pullscore/lang"
)

// Clauses returns the shot's with-statement laid over the film's.
func Clauses(film, shot *lang.With) lang.With {
	var w lang.With
	if film != nil {
		w = *film
	}
	if shot == nil {
		return w
	}
	w.Node = shot.Node
	over(&w.Camera, shot.Camera)
	over(&w.Lens, shot.Lens)
	over(&w.Puller, shot.Puller)
	over(&w.Operator, shot.Operator)
	over(&w.Stop, shot.Stop)
	over(&w.Meter, shot.Meter)
	over(&w.Focal, shot.Focal)
	over(&w.ND, shot.ND)
	over(&w.Gear, shot.Gear)
	over(&w.Wheel, shot.Wheel)
	over(&w.Diopter, shot.Diopter)
	over(&w.Tube, shot.Tube)
	over(&w.Shoots, shot.Shoots)
	if shot.Travel != nil { // one clause, with the part that it may name
		w.Travel, w.TravelFrom, w.TravelTo = shot.Travel, shot.TravelFrom, shot.TravelTo
	}
	return w
}

func over[T any](to **T, from *T) {
	if from != nil {
		*to = from
	}
}

// Losses are what could not be read, by the keywords of the lines; "" is a line
// that may be any statement. A name that is declared by such a line and is known
// is no loss.
type Losses map[string]bool

// note notes a statement that could not be read.
func (l Losses) note(s lang.Statement) {
	if bad, ok := s.(*lang.Bad); ok && (bad.Name == nil || bad.Keyword == "") {
		l[bad.Keyword] = true
	}
}

// Any reports whether a statement with a keyword may be among them.
func (l Losses) Any(keyword string) bool { return l[keyword] || l[""] }

// declares reports whether a name of a kind may be declared by one of them, or
// by a file that could not be read.
func (l Losses) declares(k DeclKind) bool {
	if l[""] || l["use"] || l[k.String()] {
		return true
	}
	return k < DeclCamera && slices.ContainsFunc(kindNames[:DeclCamera], func(word string) bool { return l[word] })
}

// LostIn returns what could not be read under a header.
func LostIn(sec *lang.Section) Losses {
	l := Losses{}
	for _, s := range sec.Body {
		l.note(s)
	}
	return l
}

// Meant returns the keyword of a header, also of one that could not be read: by
// what stands under it where its own word does not tell; "" where nothing does.
func Meant(sec *lang.Section) string {
	switch h := sec.Head.(type) {
	case *lang.Camera:
		return "camera"
	case *lang.Lens:
		return "lens"
	case *lang.Puller:
		return "puller"
	case *lang.Move:
		return "move"
	case *lang.Shot:
		return "shot"
	case *lang.Scene:
		return "scene"
	case *lang.Bad:
		if h.Keyword != "" {
			return h.Keyword
		}
	}
	for _, s := range sec.Body {
		switch s.(type) {
		case *lang.Sensor, *lang.Shoots, *lang.Records, *lang.Support, *lang.ISO, *lang.Shutter, *lang.Monitor:
			return "camera"
		case *lang.Focal, *lang.Stops, *lang.Closest, *lang.Ring, *lang.Turns, *lang.Mark, *lang.Marks, *lang.Ends, *lang.Play,
			*lang.Squeeze, *lang.Ratio, *lang.Darkens, *lang.Planes, *lang.Breathing, *lang.ThroughZoom, *lang.Pupil:
			return "lens"
		case *lang.Takes, *lang.Hand, *lang.Limit, *lang.Grip, *lang.Spread, *lang.Bias:
			return "puller"
		case *lang.With, *lang.Start, *lang.Begins, *lang.Lasts, *lang.Remark, *lang.Clip:
			return "shot"
		}
	}
	return ""
}

// Has tells whether a section has a statement of a kind.
func Has[S lang.Statement](sec *lang.Section) bool {
	return slices.ContainsFunc(sec.Body, func(s lang.Statement) bool { _, ok := s.(S); return ok })
}
