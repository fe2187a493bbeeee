// Whether two shots are the same to whoever draws them.

package rebuild

import (
	"math"
	"reflect"
	"slices"

	"pullscore/interp/plan"
)

// unplaced returns a shot as drawings may see it: without where it stands in the
// text, which a line written above would change.
func unplaced(shot *plan.Shot) *plan.Shot {
	s := *shot
	s.File, s.Line = "", 0
	if s.Staging != nil {
		g := *s.Staging
		g.Placer, g.Runner, g.Matcher = 0, 0, 0
		g.Readings = slices.Clone(g.Readings)
		for i := range g.Readings {
			g.Readings[i].Line = 0
		}
		s.Staging = &g
	}
	s.Pulls = make([]*plan.Pull, len(shot.Pulls))
	for i, pull := range shot.Pulls {
		p := *pull
		p.File, p.Line, p.Column = "", 0, 0
		s.Pulls[i] = &p
	}
	return &s
}

// identical reports whether two shots hold the same all through, to the bit:
// whatever is computed from one comes out the same from the other.
func identical(a, b *plan.Shot) bool {
	return alike(reflect.ValueOf(a), reflect.ValueOf(b))
}

// alike is like reflect.DeepEqual, save that a NaN is like itself: in a plan it
// says that a figure does not apply. Plans have no circles.
func alike(a, b reflect.Value) bool {
	if a.IsValid() != b.IsValid() || a.IsValid() && a.Type() != b.Type() {
		return false
	}
	switch a.Kind() {
	case reflect.Invalid:
		return true
	case reflect.Bool:
		return a.Bool() == b.Bool()
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return a.Int() == b.Int()
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64, reflect.Uintptr:
		return a.Uint() == b.Uint()
	case reflect.Float32, reflect.Float64:
		return math.Float64bits(a.Float()) == math.Float64bits(b.Float())
	case reflect.String:
		return a.String() == b.String()
	case reflect.Pointer:
		return a.Pointer() == b.Pointer() || alike(a.Elem(), b.Elem())
	case reflect.Interface:
		return alike(a.Elem(), b.Elem())
	case reflect.Struct:
		return alikeAll(a.NumField(), a.Field, b.Field)
	case reflect.Slice:
		return a.IsNil() == b.IsNil() && a.Len() == b.Len() && alikeAll(a.Len(), a.Index, b.Index)
	case reflect.Array:
		return alikeAll(a.Len(), a.Index, b.Index)
	}
	return false // plans hold nothing else
}

// alikeAll compares n parts.
func alikeAll(n int, a, b func(int) reflect.Value) bool {
	for i := range n {
		if !alike(a(i), b(i)) {
			return false
		}
	}
	return true
}
