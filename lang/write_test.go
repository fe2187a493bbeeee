package lang

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestWrite(t *testing.T) {
	src := `subject A at 1.70m,12deg left
subject B at A-35 cm
subject T2 at (2m+10cm)*3/4
watched on 55in diagonal screen from 2.5m
shot 1
  start on A   and "MRS. DALE"
  rack to A- (5cm + 2cm), on A "every"  2 -6fr, landing on end of A+0.5s
  rack to inf, at -(1/48s) * 2 + 1s - 2s
  rack to 5'6", on 01:00:10:12
`
	want := []string{
		"A", "1.7 m, 12 deg left", "B", "A - 35 cm", "T2", "(2 m + 10 cm) * 0.75", "55 in diagonal", "2.5 m",
		`A and "MRS. DALE"`, "A - (5 cm + 2 cm)", `A "every" 2 - 6 fr`, "end of A + 0.5 s", "inf", "-1/48 s * 2 + 1 s - 2 s",
		`5'6"`, "01:00:10:12",
	}
	file, diags := Parse("plan.pull", []byte(src))
	if len(diags) > 0 {
		t.Fatal(diags)
	}
	var got []string
	for _, s := range append(file.Body, file.Sections[0].Body...) {
		got = append(got, pieces(s)...)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got\n%q\nwant\n%q", got, want)
	}
}

// pieces writes what stands in the fields of a statement.
func pieces(s Statement) (list []string) {
	v := reflect.ValueOf(s).Elem()
	for i := range v.NumField() {
		if p, ok := v.Field(i).Interface().(interface{ Range() Range }); ok && v.Field(i).Kind() == reflect.Pointer && !v.Field(i).IsNil() {
			list = append(list, Write(p))
		}
	}
	return list
}

// What is written is read back as what it was.
func TestWrittenPiecesAreRead(t *testing.T) {
	name := rapid.SampledFrom([]string{"A", "T2", `"MRS. DALE"`, "beat", "x", "nearer"})
	value := valueOf(name)
	sign := rapid.SampledFrom([]string{" + ", " - "})
	moment := rapid.Custom(func(t *rapid.T) string {
		text := rapid.SampledFrom([]string{`A "every" 2`, `"every"`, "end of A", `end of "every" 2`, `end of A "every"`, "end of dolly", "knock", "T2", "2.5 s", "01:00:00:00", "4 * beat", "(1 s + beat)"}).Draw(t, "moment")
		if rapid.Bool().Draw(t, "moved") {
			text += sign.Draw(t, "sign") + value.Draw(t, "by")
		}
		return text
	})
	rapid.Check(t, func(t *rapid.T) {
		src := fmt.Sprintf("shot 1\n  rack to %s and %s, on %s\n  A moves to %s, %s left over 2 s\n", value.Draw(t, "a"), value.Draw(t, "b"),
			moment.Draw(t, "moment"), value.Draw(t, "at"), rapid.SampledFrom([]string{"2 m", "-5 cm", "(2 m + 1 m)", "2 * 3 m"}).Draw(t, "side"))
		first, _ := Parse("", []byte(src))
		rack, isRack := first.Sections[0].Body[0].(*Rack)
		moves, isMoves := first.Sections[0].Body[1].(*Moves)
		if !isRack || !isMoves {
			t.Fatalf("not read: %s", src)
		}
		again := fmt.Sprintf("shot 1\n  rack to %s, on %s\n  A moves to %s over 2 s\n", Write(rack.Target), Write(rack.On), Write(moves.To))
		second, _ := Parse("", []byte(again))
		if a, b := meaning(first), meaning(second); a != b {
			t.Fatalf("%s\nis written\n%s\n%s\n%s", src, again, a, b)
		}
	})
}

// valueOf generates values with arithmetic in them.
func valueOf(name *rapid.Generator[string]) *rapid.Generator[string] {
	leaf := rapid.OneOf(name, rapid.SampledFrom([]string{"2 m", "1/48 s", "5 1/2 in", "5'6\"", "0.25s", "12 fr", "1.9 m", "f/2.8", "inf"}))
	var tree func(t *rapid.T, depth int) string
	tree = func(t *rapid.T, depth int) string {
		switch kind := rapid.IntRange(0, 3).Draw(t, "kind"); {
		case depth == 0 || kind == 0:
			return leaf.Draw(t, "leaf")
		case kind == 1:
			return "(-" + tree(t, depth-1) + ")"
		default:
			text := strings.Join([]string{tree(t, depth-1), rapid.SampledFrom([]string{"+", "-", "*", "/"}).Draw(t, "op"), tree(t, depth-1)}, " ")
			if rapid.Bool().Draw(t, "brackets") {
				return "(" + text + ")"
			}
			return text
		}
	}
	return rapid.Custom(func(t *rapid.T) string { return tree(t, 3) })
}
