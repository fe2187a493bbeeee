package plan

import (
	"reflect"
	"testing"

	"pullscore/optics/ring"
)

// A plan is plain data: what two readings of one text give can be compared part
// by part. The law of a ring alone holds a curve behind an interface.
func TestPlanIsPlainData(t *testing.T) {
	seen := map[reflect.Type]bool{}
	var walk func(what reflect.Type, path string)
	walk = func(what reflect.Type, path string) {
		if seen[what] {
			return
		}
		seen[what] = true
		switch what.Kind() {
		case reflect.Func, reflect.Chan, reflect.Map, reflect.Interface, reflect.UnsafePointer:
			t.Errorf("%s is a %s", path, what.Kind())
		case reflect.Pointer, reflect.Slice, reflect.Array:
			walk(what.Elem(), path)
		case reflect.Struct:
			if what == reflect.TypeFor[ring.Law]() {
				return
			}
			for i := range what.NumField() {
				walk(what.Field(i).Type, path+"."+what.Field(i).Name)
			}
		}
	}
	walk(reflect.TypeFor[Plan](), "Plan")
	if len(seen) < 20 {
		t.Errorf("only %d types were seen", len(seen))
	}
}
