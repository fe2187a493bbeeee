// The plain statements that nearly every plan or kit has. They too are written
// by hand: building participle's parser of a statement takes longer than reading
// a plan, and a plan is read while somebody waits.

package lang

import (
	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

var (
	_ participle.Parseable = (*Plan)(nil)
	_ participle.Parseable = (*Rate)(nil)
	_ participle.Parseable = (*Use)(nil)
	_ participle.Parseable = (*Watched)(nil)
	_ participle.Parseable = (*Voice)(nil)
	_ participle.Parseable = (*Camera)(nil)
	_ participle.Parseable = (*Lens)(nil)
	_ participle.Parseable = (*Shot)(nil)
	_ participle.Parseable = (*Sensor)(nil)
	_ participle.Parseable = (*Records)(nil)
	_ participle.Parseable = (*Support)(nil)
	_ participle.Parseable = (*ISO)(nil)
	_ participle.Parseable = (*Shutter)(nil)
	_ participle.Parseable = (*Focal)(nil)
	_ participle.Parseable = (*Stops)(nil)
	_ participle.Parseable = (*Closest)(nil)
	_ participle.Parseable = (*Ring)(nil)
	_ participle.Parseable = (*Mark)(nil)
	_ participle.Parseable = (*Breathing)(nil)
	_ participle.Parseable = (*Start)(nil)
	_ participle.Parseable = (*Pause)(nil)
	_ participle.Parseable = (*Hold)(nil)
)

// readName, readText and readValue read statements of one word and what the
// word takes.

func readName(lex *lexer.PeekingLexer, word string, field **Name) error {
	r := newReader(lex, word)
	r.words(word)
	r.name(field)
	return r.result()
}

func readText(lex *lexer.PeekingLexer, word string, field **Text) error {
	r := newReader(lex, word)
	r.words(word)
	r.text(field)
	return r.result()
}

func readValue(lex *lexer.PeekingLexer, word string, field **Expr) error {
	r := newReader(lex, word)
	r.words(word)
	r.value(field, r.spec.wants)
	return r.result()
}

// Parse reads the title of a plan.
func (p *Plan) Parse(lex *lexer.PeekingLexer) error { return readText(lex, "plan", &p.Title) }

// Parse reads the name of a file.
func (u *Use) Parse(lex *lexer.PeekingLexer) error { return readText(lex, "use", &u.File) }

// Parse reads the name of somebody who is heard and not focused on.
func (v *Voice) Parse(lex *lexer.PeekingLexer) error { return readName(lex, "voice", &v.Name) }

// Parse reads the header of a camera.
func (c *Camera) Parse(lex *lexer.PeekingLexer) error { return readName(lex, "camera", &c.Name) }

// Parse reads the header of a lens.
func (l *Lens) Parse(lex *lexer.PeekingLexer) error { return readName(lex, "lens", &l.Name) }

// Parse reads how many pixels a camera records.
func (c *Records) Parse(lex *lexer.PeekingLexer) error { return readValue(lex, "records", &c.Pixels) }

// Parse reads an exposure index.
func (i *ISO) Parse(lex *lexer.PeekingLexer) error { return readValue(lex, "iso", &i.Value) }

// Parse reads a shutter angle or time.
func (s *Shutter) Parse(lex *lexer.PeekingLexer) error { return readValue(lex, "shutter", &s.Value) }

// Parse reads how near a lens focuses.
func (c *Closest) Parse(lex *lexer.PeekingLexer) error {
	return readValue(lex, "closest", &c.Distance)
}

// Parse reads how much a lens breathes.
func (b *Breathing) Parse(lex *lexer.PeekingLexer) error {
	return readValue(lex, "breathing", &b.Percent)
}

// Parse reads a pause.
func (p *Pause) Parse(lex *lexer.PeekingLexer) error { return readValue(lex, "pause", &p.Time) }

// Parse reads how long the focus stays.
func (h *Hold) Parse(lex *lexer.PeekingLexer) error { return readValue(lex, "hold", &h.Time) }

// Parse reads a frame rate as it is written.
func (x *Rate) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "rate")
	r.words("rate")
	t := lex.Peek()
	if t.Type != tokNumber {
		r.fail(notA(t, "Number", r.spec.wants))
		return r.result()
	}
	x.Value = lex.Next().Value
	if r.take("df") {
		x.Value += "df"
	}
	return r.result()
}

// Parse reads the screen that a film is watched on.
func (w *Watched) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "watched")
	r.words("watched", "on")
	read(r, &w.Width, r.spec.wants)
	r.words("screen", "from")
	r.value(&w.From, r.spec.wants)
	return r.result()
}

// Parse reads the header of a shot.
func (s *Shot) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "shot")
	r.words("shot")
	t := lex.Peek()
	if t.Type != tokID {
		r.fail(noID(t))
		return r.result()
	}
	s.ID = lex.Next().Value
	if lex.Peek().Type == tokText {
		r.text(&s.Title)
	}
	return r.result()
}

// Parse reads the size of a sensor.
func (s *Sensor) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "sensor")
	r.words("sensor")
	r.value(&s.Width, r.spec.wants)
	r.oneOf("x", "×")
	r.value(&s.Height, r.spec.wants)
	return r.result()
}

// Parse reads what a camera stands on.
func (s *Support) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "on")
	r.words("on")
	s.Kind = r.oneOf("tripod", "dolly", "shoulder", "hand")
	return r.result()
}

// Parse reads a focal length, or the range of a zoom.
func (f *Focal) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "focal")
	r.words("focal")
	r.value(&f.From, r.spec.wants)
	if r.take("to") {
		r.value(&f.To, r.spec.wants)
	}
	return r.result()
}

// Parse reads the range of a diaphragm.
func (s *Stops) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "stops")
	r.words("stops")
	r.value(&s.Widest, r.spec.wants)
	r.words("to")
	r.value(&s.Smallest, r.spec.wants)
	if r.take("at") {
		r.value(&s.At, r.spec.wants)
	}
	return r.result()
}

// Parse reads how far a ring turns, and how wide it is.
func (g *Ring) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "ring")
	r.words("ring")
	switch {
	case r.take("by"):
		g.Kind = r.oneOf("wire")
	case r.take("none"):
		g.Kind = "none"
	default:
		r.value(&g.Angle, anAngle)
		r.take(",")
		r.words("diameter")
		r.value(&g.Diameter, aLength)
	}
	return r.result()
}

// Parse reads an engraved distance and where it stands on the ring.
func (m *Mark) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "mark")
	r.words("mark")
	r.value(&m.Distance, r.spec.wants)
	r.words("at")
	r.value(&m.Angle, r.spec.wants)
	return r.result()
}

// Parse reads what is sharp when a shot begins.
func (s *Start) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "start")
	r.words("start", "on")
	r.target(&s.Target)
	return r.result()
}
