// Writing: pieces of the tree as a plan would have them, in one canonical way.

package lang

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Write returns a piece of the tree as text of a plan: a *Name, *Text, *Expr, *Anchor,
// *Place, *Target, *Size, *Position, *FormatName, *Floor, *Way, *Aim or *ShotRef. It does not keep the layout of the source. Parsed again, the
// text has the same meaning. Numbers keep their units, and a fraction of small numbers
// stays a fraction, as in 1/48 s.
func Write(piece interface{ Range() Range }) string {
	switch x := piece.(type) {
	case *Name:
		return WriteName(x.Text)
	case *Text:
		return WriteText(x.Value)
	case *Expr:
		return writeExpr(x, 0)
	case *Anchor:
		return writeAnchor(x)
	case *Place:
		if x.Side == nil {
			return Write(x.At)
		}
		return Write(x.At) + ", " + Write(x.Side) + " " + x.Dir
	case *Target:
		var list []string
		for _, of := range x.Of {
			list = append(list, Write(of))
		}
		return strings.Join(list, " and ")
	case *Position:
		return writePosition(x)
	case *Floor:
		return writeFloor(x)
	case *Way:
		if x.Towards != nil {
			return Write(x.By) + " towards " + Write(x.Towards)
		}
		return Write(x.By) + " " + x.Dir
	case *Aim:
		return writeAim(x)
	case *ShotRef:
		return x.ID
	case *FormatName:
		return writeFormat(x)
	case *Size:
		if x.Diagonal {
			return Write(x.Length) + " diagonal"
		}
		return Write(x.Length)
	}
	return ""
}

// writeFloor writes a place on the floor.
func writeFloor(x *Floor) string {
	var parts []string
	if x.Base != nil {
		parts = append(parts, Write(x.Base))
	}
	for _, way := range x.Ways {
		parts = append(parts, Write(way))
	}
	return strings.Join(parts, ", ")
}

// writeAim writes where a lens looks.
func writeAim(x *Aim) string {
	var names []string
	for _, of := range x.Of {
		names = append(names, Write(of))
	}
	text := strings.Join(names, " and ")
	if x.Turn != nil {
		text += ", " + Write(x.Turn) + " " + x.Dir
	}
	if x.Lift != nil {
		text += ", " + Write(x.Lift) + " " + x.LiftDir
	}
	return text
}

// writePosition writes where a mark lies.
func writePosition(x *Position) string {
	switch {
	case x.Clock > 0:
		minutes := int(math.Round(float64(x.Clock) * 60))
		if minutes%60 == 0 {
			return strconv.Itoa(minutes/60) + " o'clock"
		}
		return fmt.Sprintf("%d:%02d o'clock", minutes/60, minutes%60)
	case x.Of != nil:
		return Write(x.Value) + " of " + Write(x.Of)
	}
	return Write(x.Value)
}

// writeFormat writes the name of a sensor's format, in the words of the table of
// formats.
func writeFormat(x *FormatName) string {
	text := x.Perfs
	if x.Name != nil {
		text = strings.TrimSpace(Write(x.Name) + " " + text)
	} else {
		text = strings.TrimSpace(strings.TrimRight(x.Type, `in"'″′”’ `) + " in type " + x.Shape)
	}
	return text
}

func writeAnchor(a *Anchor) string {
	var text string
	switch a.Kind {
	case AnchorEnd:
		text = "end of " + a.Of + writeWords(a)
	case AnchorName:
		text = Write(a.Name)
	case AnchorTime:
		text = writeExpr(a.Time, bindsProduct)
	default:
		text = writeWords(a)
	}
	if a.Offset == nil {
		return text
	}
	offset := Write(a.Offset)
	if rest, minus := strings.CutPrefix(offset, "-"); minus {
		return text + " - " + rest
	}
	return text + " + " + offset
}

// writeWords writes the name of an anchor, its words and its number, those that it
// has.
func writeWords(a *Anchor) string {
	var parts []string
	if a.Name != nil {
		parts = append(parts, Write(a.Name))
	}
	if a.Words != nil {
		parts = append(parts, Write(a.Words))
	}
	if a.Nth > 0 {
		parts = append(parts, strconv.Itoa(a.Nth))
	}
	return strings.Join(parts, " ")
}

// How tightly a value binds: one that binds less than what is around it stands
// in brackets.
const (
	bindsSum = iota + 1
	bindsProduct
	bindsSign
)

// writeExpr writes a value, in brackets where it binds less than asked for.
func writeExpr(x *Expr, least int) string {
	var text string
	binds := bindsSign
	switch x.Kind {
	case ExprNumber:
		text = writeQuantity(x)
	case ExprStop:
		text = x.Unit.String() + plain(x.Value)
	case ExprTimecode:
		text = x.Ref
	case ExprInf:
		text = "inf"
	case ExprName:
		text = WriteName(x.Ref)
	case ExprMinus:
		text = "-" + writeExpr(x.X, bindsSign)
	case ExprBinary:
		if binds = bindsSum; x.Op == '*' || x.Op == '/' {
			binds = bindsProduct
		}
		text = writeExpr(x.X, binds) + " " + string(x.Op) + " " + writeExpr(x.Y, binds+1)
	}
	if binds < least {
		return "(" + text + ")"
	}
	return text
}

// writeQuantity writes a number with its unit: feet with inches where a tape has
// them so.
func writeQuantity(x *Expr) string {
	switch x.Unit {
	case UnitNone:
		return writeNumber(x.Value)
	case UnitFoot:
		feet := math.Floor(x.Value)
		if inches := round((x.Value-feet)*12, 1000); inches > 0 && feet+inches/12 == x.Value {
			return plain(feet) + "'" + plain(inches) + `"`
		}
	}
	return writeNumber(x.Value) + " " + x.Unit.String()
}

// writeNumber writes a number with its digits, or as a fraction where it has
// none that end.
func writeNumber(v float64) string {
	const most = 6 // digits behind the point
	if text := plain(v); len(text)-strings.IndexByte(text+".", '.') <= most+1 {
		return text
	}
	for by := 2.0; by <= 1000; by++ {
		if top := math.Round(v * by); top > 0 && top/by == v {
			return plain(top) + "/" + plain(by)
		}
	}
	return plain(v)
}
