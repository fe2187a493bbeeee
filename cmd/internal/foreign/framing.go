// A framing decision list: the sensor of a camera.

package foreign

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/fdl"
	"pullscore/lang/lines"
)

// A Choice is the error for a list with several framings of which none, or more
// than one, has the name asked for.
type Choice struct {
	File, Name string
	Framings   []string // each as context, canvas and framing
}

// Error lists the framings.
func (c *Choice) Error() string {
	text := fmt.Sprintf("%s: has %d framings: name one with --name", c.File, len(c.Framings))
	if c.Name != "" {
		text = fmt.Sprintf("%s: %q names none or several of %d framings; --name takes one of these, or one part that only it has", c.File, c.Name, len(c.Framings))
	}
	const most = 40
	for i, f := range c.Framings {
		if i == most {
			return text + fmt.Sprintf("\n  and %d more", len(c.Framings)-most)
		}
		text += "\n  " + f
	}
	return text
}

// FDL returns the kit of a framing decision list: a camera. The name says which
// framing, by its own label or identifier, or by those of its canvas or context; a
// list with one framing needs none. The error is a *Choice; the kit then has the
// findings alone.
func FDL(text *lines.Text, name string) (*Kit, error) {
	list, findings := fdl.Read(text)
	if len(list.Framings) == 0 {
		if len(findings) == 0 {
			return nil, fmt.Errorf("%s: has no canvas", text.Name)
		}
		return &Kit{Findings: findings}, nil
	}
	f, ok := chosen(list.Framings, name)
	if !ok {
		choice := &Choice{File: text.Name, Name: name}
		for i := range list.Framings {
			choice.Framings = append(choice.Framings, titleOf(&list.Framings[i]))
		}
		return &Kit{Findings: findings}, choice
	}
	p := &page{}
	p.note(0, "From %s: ASC framing decision list %d.%d, %s.", clean(filepath.Base(text.Name)), list.Major, list.Minor, titleOf(f))
	p.note(0, "Each comment names the field of the file. Nothing is guessed: where ___ is, the file")
	p.note(0, "says nothing. Fill it in, and delete the first #.")
	missing := writeFraming(p, f)
	findings = append(findings, lang.Diagnostic{
		Code: "foreign-lens", Severity: lang.Note,
		Message: nothingOf(missing),
		Detail:  "A framing decision list is about the sensor alone. The comments in the kit say how to get the rest.",
		Range:   text.Start(),
	})
	return settled(p, text.Name, lang.Sort(findings)), nil
}

// writeFraming writes the camera, and returns what the list does not say.
func writeFraming(p *page, f *fdl.Framing) (missing []string) {
	p.head("camera "+named(f.Context, "A"), "context.label")
	if w, h, ok := f.Sensor(); ok {
		p.say(fmt.Sprintf("sensor %s x %s mm", units.Decimal(w, 4), units.Decimal(h, 4)), fmt.Sprintf("canvas.physical_dimensions %s mm x %s px / canvas.dimensions %s px", sizeOf(f.Physical), framedOf(f), sizeOf(f.Recorded)))
	} else {
		missing = append(missing, "sensor")
		p.lacks("sensor ___ x ___ mm", fmt.Sprintf("the list has no canvas.physical_dimensions; of the width of the canvas %s are framed, of the height %s",
			units.Style{}.Share(f.Framed.Width/f.Recorded.Width, 2), units.Style{}.Share(f.Framed.Height/f.Recorded.Height, 2)))
	}
	p.say(fmt.Sprintf("records %s px", units.Decimal(f.Framed.Width, 0)), "the width of "+framedOf(f)+" px")
	if f.Squeeze != 1 {
		p.note(1, "canvas.anamorphic_squeeze is %s: that is the lens's, so write under it: squeeze %[1]s", units.Decimal(f.Squeeze, 4))
		p.note(1, "The framed picture has the shape %s on the screen.", units.Decimal(f.Shape(), 3))
	}
	p.lines = append(p.lines, line{})
	p.note(0, "The list says nothing of the lens. As in:")
	for _, s := range []string{`lens "NAME"`, "  focal ___ mm", "  stops f/___ to f/___", "  closest ___ cm", "  ring ___ deg, girth ___ mm"} {
		p.note(0, "%s", s)
	}
	return append(missing, "lens", "ring")
}

// framedOf writes the size of what is framed, with its field.
func framedOf(f *fdl.Framing) string {
	field := "framing_decision.dimensions "
	if f.Label == "" && f.ID == "" {
		field = "all of "
	}
	return field + sizeOf(f.Framed)
}

func sizeOf(s fdl.Size) string {
	return units.Decimal(s.Width, 4) + " x " + units.Decimal(s.Height, 4)
}

// titleOf names a framing by all that it lies in.
func titleOf(f *fdl.Framing) string {
	parts := []string{f.Context, cmp.Or(f.Canvas, f.CanvasID), cmp.Or(f.Label, f.ID, "the whole canvas")}
	for i := range parts {
		parts[i] = cmp.Or(clean(parts[i]), "no name")
	}
	return strings.Join(parts, " / ")
}

// chosen returns the framing that a name means; ok is false for none and for
// several. The whole title goes before a part of it.
func chosen(list []fdl.Framing, name string) (f *fdl.Framing, ok bool) {
	if name == "" {
		return &list[0], len(list) == 1
	}
	whole := func(k *fdl.Framing) bool { return strings.EqualFold(titleOf(k), name) }
	part := func(k *fdl.Framing) bool {
		return slices.ContainsFunc([]string{k.Label, k.ID, k.Intent, k.Canvas, k.CanvasID, k.Context}, func(p string) bool { return strings.EqualFold(p, name) })
	}
	for _, fits := range []func(*fdl.Framing) bool{whole, part} {
		found := 0
		for i := range list {
			if fits(&list[i]) {
				f = &list[i]
				found++
			}
		}
		if found > 0 {
			return f, found == 1
		}
	}
	return nil, false
}
