// Parts: the names, texts and values of a statement, wherever they stand in it.

package lang

import (
	"iter"
	"reflect"
	"strings"
	"unicode/utf8"
)

// Parts yields each *Name, *Text, *Expr, *Anchor, *FormatName and *ShotRef of a statement,
// in the order of its fields. It goes into anchors and values, and not into the name of a
// format, which no plan declares.
func Parts(s Statement) iter.Seq[any] {
	return func(yield func(any) bool) { partsOf(reflect.ValueOf(s).Elem(), yield) }
}

// partsOf yields the pieces in the fields of a struct; false ends it.
func partsOf(v reflect.Value, yield func(any) bool) bool {
	for i := range v.NumField() {
		f := v.Field(i)
		switch f.Kind() {
		case reflect.Slice:
			for k := range f.Len() {
				if !part(f.Index(k), yield) {
					return false
				}
			}
		case reflect.Pointer:
			if !part(f, yield) {
				return false
			}
		}
	}
	return true
}

// part yields a field, where it is a piece, and those in it.
func part(f reflect.Value, yield func(any) bool) bool {
	if f.Kind() != reflect.Pointer || f.IsNil() {
		return true
	}
	switch x := f.Interface().(type) {
	case *Name, *Text, *FormatName, *ShotRef:
		return yield(x)
	case *Expr, *Anchor:
		return yield(x) && partsOf(f.Elem(), yield)
	case *Place, *Target, *Size, *Position, *Floor, *Way, *Aim, *Past:
		return partsOf(f.Elem(), yield)
	}
	return true
}

// Part returns where a part of the text's value stands in the source, from and to in
// bytes of the value. Where the value is not what the source has, as with the parameters
// of a move filled in, it returns the place of the whole text.
func (x *Text) Part(source []byte, from, to int) Range {
	whole := x.Range()
	if whole.Start.Offset < 0 || whole.End.Offset > len(source) {
		return whole
	}
	raw := string(source[whole.Start.Offset:whole.End.Offset])
	open := `"`
	if strings.HasPrefix(raw, "“") {
		open = "“"
	}
	if len(raw) < 2*len(open) || unquote(raw) != x.Value {
		return whole
	}
	inner := raw[len(open) : len(raw)-len(open)]
	start, end := len(open)+rawOffset(inner, from), len(open)+rawOffset(inner, to)
	return Range{whole.File, along(whole.Start, raw, start), along(whole.Start, raw, end)}
}

// rawOffset returns where a byte of a text's value stands in the text as it is written.
func rawOffset(inner string, at int) int {
	raw := 0
	for value := 0; value < at && raw < len(inner); {
		size := 1
		if rest, escaped := strings.CutPrefix(inner[raw:], `\`); escaped {
			for _, sign := range []string{`\`, `"`, `”`} {
				if strings.HasPrefix(rest, sign) {
					size, raw = len(sign), raw+1
					break
				}
			}
		}
		raw += size
		value += size
	}
	return raw
}

// along returns the place that is some bytes behind another on its line.
func along(p Pos, text string, bytes int) Pos {
	return Pos{Offset: p.Offset + bytes, Line: p.Line, Column: p.Column + utf8.RuneCountInString(text[:bytes])}
}

// IDRange returns where the ID of a shot stands in the source; ok is false where it does
// not stand there as it was read.
func (s *Shot) IDRange(source []byte) (at Range, ok bool) {
	whole := s.Range()
	if whole.Start.Offset < 0 || whole.End.Offset > len(source) {
		return Range{}, false
	}
	raw := string(source[whole.Start.Offset:whole.End.Offset])
	rest := strings.TrimLeft(strings.TrimPrefix(raw, "shot"), " \t")
	if !strings.HasPrefix(rest, s.ID) {
		return Range{}, false
	}
	start := len(raw) - len(rest)
	return Range{whole.File, along(whole.Start, raw, start), along(whole.Start, raw, start+len(s.ID))}, true
}

// NamesIn returns the tokens of a part of a source that can be names without quotes, in
// their order, each with the token before it, "" at the start. It is for lines that
// could not be read.
func NamesIn(source []byte, part Range) (list []*Name, before []string) {
	if part.Start.Offset < 0 || part.End.Offset > len(source) || part.Start.Offset > part.End.Offset {
		return nil, nil
	}
	s := newScanner(part.File, string(source[part.Start.Offset:part.End.Offset]))
	last := ""
	for t := s.scan(); !t.EOF(); t = s.scan() {
		if isName(&t) && t.Type != tokText && !isSoft(t.Value) {
			n := &Name{}
			t.Pos.Offset += part.Start.Offset
			if t.Pos.Line == 1 {
				t.Pos.Column += part.Start.Column - 1
			}
			t.Pos.Line += part.Start.Line - 1
			n.Node = Node{t.Pos, endOf(&t)}
			n.Text, _ = nameOf(&t)
			list, before = append(list, n), append(before, last)
		}
		last = t.Value
	}
	return list, before
}
