// Tests of values: numbers, units, feet and inches, arithmetic, anchors.

package lang

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// value parses the value of a let.
func value(t rapid.TB, src string) *Expr {
	f, diags := Parse("", []byte("let a = "+src+"\n"))
	if len(diags) > 0 {
		t.Fatalf("%q: %s", src, diags[0].Message)
	}
	return f.Body[0].(*Let).Value
}

// TestUnits checks sizes against their definitions: the inch is 25.4 mm and
// the foot 0.3048 m exactly (international yard and pound agreement, 1959;
// NIST SP 811, 2008, appendix B.8), an arc minute a sixtieth of a degree
// (The International System of Units, BIPM, 9th edition, 2019, table 8).
func TestUnits(t *testing.T) {
	tests := []struct {
		src  string
		dim  Dimension
		want float64 // in SI, degrees for angles
	}{
		{"1 mm", DimLength, 1e-3}, {"1 cm", DimLength, 1e-2}, {"1 m", DimLength, 1},
		{"1 in", DimLength, 0.0254}, {"1 ft", DimLength, 0.3048}, {"1'", DimLength, 0.3048},
		{"5'6\"", DimLength, 1.6764}, {"5' 6 1/2\"", DimLength, 1.6891}, {"5′6″", DimLength, 1.6764},
		{"5’6”", DimLength, 1.6764}, {"5 1/2 in", DimLength, 0.1397}, {"5'1/2\"", DimLength, 1.5367},
		{"5'-6\"", DimLength, 1.6764}, {"5'-6 1/2\"", DimLength, 1.6891}, {"5′‑6″", DimLength, 1.6764}, {"5′–6″", DimLength, 1.6764},
		{"5' 6''", DimLength, 1.6764}, {"5′6′′", DimLength, 1.6764}, {"18\"", DimLength, 0.4572}, {"18″", DimLength, 0.4572},
		{"5 1/2\"", DimLength, 0.1397}, {"1/2\"", DimLength, 0.0127}, {"5 ft 6 in", DimLength, 1.6764}, {"5ft 6in", DimLength, 1.6764},
		{"5 ft 6 1/2 in", DimLength, 1.6891}, {"5 ft 6\"", DimLength, 1.6764}, {"5' 6 in", DimLength, 1.6764}, {"5 ft 6.5 in", DimLength, 1.6891},
		{"1 deg", DimAngle, 1}, {"90°", DimAngle, 90}, {"1 turn", DimAngle, 360}, {"60 arcmin", DimAngle, 1},
		{"1 s", DimTime, 1}, {"250 ms", DimTime, 0.25}, {"1/50 s", DimTime, 0.02}, {".5 s", DimTime, 0.5},
		{"f/2.8", DimStop, 2.8}, {"T2.1", DimStop, 2.1}, {"T2", DimStop, 2}, {"f/11", DimStop, 11},
		{"95 %", DimRatio, 0.95}, {"150 wpm", DimPace, 150}, {"5 bit/s", DimThroughput, 5},
		{"400 deg / s", DimSpeed, 400}, {"3840px", DimPixels, 3840}, {"0.9", DimNone, 0.9},
	}
	for _, test := range tests {
		x := value(t, test.src)
		if got := x.Value * x.Unit.SI(); math.Abs(got-test.want) > 1e-12*test.want || x.Unit.Dimension() != test.dim {
			t.Errorf("%s is %v (%v), not %v (%v)", test.src, got, x.Unit.Dimension(), test.want, test.dim)
		}
	}
	if u := value(t, "12 fr").Unit; u != UnitFrame || u.SI() != 0 || u.Dimension() != DimTime {
		t.Errorf("frames are %v", u)
	}
}

// render writes a value in full brackets.
func render(x *Expr) string {
	switch x.Kind {
	case ExprMinus:
		return "(-" + render(x.X) + ")"
	case ExprBinary:
		return "(" + render(x.X) + " " + string(x.Op) + " " + render(x.Y) + ")"
	case ExprName:
		return x.Ref
	case ExprInf:
		return "inf"
	case ExprTimecode:
		return x.Ref
	}
	if x.Kind == ExprStop {
		return fmt.Sprintf("%s%g", x.Unit, x.Value)
	}
	return fmt.Sprintf("%g%s", x.Value, x.Unit)
}

func TestPrecedence(t *testing.T) {
	for src, want := range map[string]string{
		"a - b - c":       "((a - b) - c)",
		"a + b * c":       "(a + (b * c))",
		"(a + b) * c":     "((a + b) * c)",
		"-a * b":          "((-a) * b)",
		"a − 2 m":         "(a - 2m)",
		"A-10 cm":         "(A - 10cm)",
		"A-B":             "A-B",
		"6/2 m":           "3m",
		"6 / 2 * 1 m":     "((6 / 2) * 1m)",
		"+a - +2 s":       "(a - 2s)",
		"f/2.8":           "f/2.8",
		"beat/2":          "(beat / 2)",
		"90 deg/s * 2 s":  "(90deg/s * 2s)",
		"2m-beat":         "(2m - beat)",
		"2 * 5 ft 6 in":   "(2 * 5.5ft)",
		"-5 ft 6 in":      "(-5.5ft)",
		"5'-6 in":         "(5ft - 6in)",
		"5 ft - 6 in":     "(5ft - 6in)",
		"5' - (6\")":      "(5ft - 6in)",
		"A-5'6\"":         "(A - 5.5ft)",
		"A - 6\" - 3\"":   "((A - 6in) - 3in)",
		"5'6\" - 3\"":     "(5.5ft - 3in)",
		"5 ft 6 in - 3\"": "(5.5ft - 3in)",
	} {
		if got := render(value(t, src)); got != want {
			t.Errorf("%s is read as %s, not %s", src, got, want)
		}
	}
}

// TestExpressions reads random expressions back, in full brackets and then in
// the formatter's layout.
func TestExpressions(t *testing.T) {
	leaf := rapid.SampledFrom([]string{"2m", "5.5cm", "beat", "NORA", "0.25s", "12fr", "f/2.8", "T1.9", "inf", "01:00:10;12"})
	var tree func(t *rapid.T, depth int) string
	tree = func(t *rapid.T, depth int) string {
		switch kind := rapid.IntRange(0, 3).Draw(t, "kind"); {
		case depth == 0 || kind == 0:
			return leaf.Draw(t, "leaf")
		case kind == 1:
			return "(-" + tree(t, depth-1) + ")"
		default:
			op := rapid.SampledFrom([]string{"+", "-", "*", "/"}).Draw(t, "op")
			return "(" + tree(t, depth-1) + " " + op + " " + tree(t, depth-1) + ")"
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		src := tree(t, 4)
		want := render(value(t, src))
		if again := value(t, want); render(again) != want {
			t.Errorf("%s is read back as %s", want, render(again))
		}
		laid := string(Format([]byte("let a = " + src)))
		if got := render(value(t, laid[len("let a = "):len(laid)-1])); got != want {
			t.Errorf("%s is laid out as %s", src, laid)
		}
	})
}

func TestAnchors(t *testing.T) {
	tests := []struct {
		src   string
		kind  AnchorKind
		name  string
		words string
		nth   int
		tail  string // time and offset
	}{
		{`"every"`, AnchorWords, "", "every", 0, ""},
		{`"every" 2 - 0.5 s`, AnchorWords, "", "every", 2, " (-0.5s)"},
		{`OTTO`, AnchorName, "OTTO", "", 0, ""},
		{`T2 + 5 fr`, AnchorName, "T2", "", 0, " 5fr"},
		{`OTTO "every" 2`, AnchorWords, "OTTO", "every", 2, ""},
		{`"MRS. DALE" "every"`, AnchorWords, "MRS. DALE", "every", 0, ""},
		{`end of OTTO + 1 s - 2 fr`, AnchorEnd, "OTTO", "", 0, " (1s - 2fr)"},
		{`2 * beat + 1 s`, AnchorTime, "", "", 0, "(2 * beat) 1s"},
		{`beat * 2`, AnchorTime, "", "", 0, "(beat * 2)"},
		{`01:00:10:12 - 4 fr`, AnchorTime, "", "", 0, "01:00:10:12 (-4fr)"},
	}
	for _, test := range tests {
		f, diags := Parse("", []byte("shot 1\n  cue c on "+test.src+"\n"))
		if len(diags) > 0 {
			t.Errorf("%s: %s", test.src, diags[0].Message)
			continue
		}
		a := f.Sections[0].Body[0].(*Cue).On
		var name, words, tail string
		if a.Name != nil {
			name = a.Name.Text
		}
		if a.Words != nil {
			words = a.Words.Value
		}
		if a.Time != nil {
			tail = render(a.Time)
		}
		if a.Offset != nil {
			tail += " " + render(a.Offset)
		}
		if a.Kind != test.kind || name != test.name || words != test.words || a.Nth != test.nth || tail != test.tail {
			t.Errorf("%s is read as %v %q %q %d %q", test.src, a.Kind, name, words, a.Nth, tail)
		}
	}
}

// TestNormalForm checks that a name is the same however its accents are coded,
// and whatever apostrophe it has.
func TestNormalForm(t *testing.T) {
	f, _ := Parse("", []byte("voice E\u0301LODIE\nvoice O’BRIEN\nvoice \"e\u0301 “x” \\\\ \\\"\"\n"))
	for i, want := range []string{"\u00C9LODIE", "O'BRIEN", "\u00E9 “x” \\ \""} {
		if got := f.Body[i].(*Voice).Name.Text; got != want {
			t.Errorf("name %d is %q, not %q", i, got, want)
		}
	}
}
