package jsontext

import (
	"encoding/json"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// What is passed over is JSON if and only if the standard library says so, which
// does not know Inf and NaN.
func checkSkip(t interface{ Fatalf(string, ...any) }, text string) {
	s := Scanner{Text: text}
	err := s.Skip()
	if got, want := err == nil && s.Next() == 0 && s.At == len(text), json.Valid([]byte(text)); got != want {
		t.Fatalf("%q: JSON %v (%v), want %v", text, got, err, want)
	}
}

var pieces = rapid.SampledFrom([]string{
	"{", "}", "[", "]", ",", ":", `"a"`, `"\u00e9\n"`, `"\u00g"`, `"\x"`, `"`, "\"\t\"", "1", "-0.5e+3", "01", "1.", ".5", "-", "+1", "1e", "true", "null", "nul", " ", "\n", `"k":`, `{"k":[]}`,
})

func TestSkipAgreesWithTheLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := ""
		for range rapid.IntRange(0, 9).Draw(t, "pieces") {
			text += pieces.Draw(t, "piece")
		}
		checkSkip(t, text)
		// One byte of what is well formed changed, put in or left out.
		const whole = `{"a" : [1, -2.5e3, "x\"y", true, null, {}], "b":{"c":[[]]}}`
		at := rapid.IntRange(0, len(whole)-1).Draw(t, "at")
		sign := rapid.SampledFrom([]string{"", ",", "}", "]", "\"", "\\", "0", "e", ".", " ", "{", ":"}).Draw(t, "sign")
		checkSkip(t, whole[:at]+sign+whole[at:])
		checkSkip(t, whole[:at]+sign+whole[at+1:])
	})
}

func FuzzSkip(f *testing.F) {
	f.Add(`{"a":[1,"\u0041",null]}`)
	f.Fuzz(func(t *testing.T, text string) {
		for i := range len(text) {
			if text[i] == 'I' || text[i] == 'N' {
				t.Skip()
			}
		}
		checkSkip(t, text)
	})
}

// The library of the form writes numbers that JSON does not have.
func TestNumbers(t *testing.T) {
	for text, want := range map[string]float64{"12": 12, "-1.5e2": -150, "0": 0} {
		s := Scanner{Text: text}
		if v, ok, err := s.Number(); v != want || !ok || err != nil {
			t.Errorf("%s: %v %v %v", text, v, ok, err)
		}
	}
	for _, text := range []string{"NaN", "Inf", "-Inf", "Infinity", "-Infinity", "1e999"} {
		s := Scanner{Text: text}
		if v, ok, err := s.Number(); ok || err != nil || s.At != len(text) || !(math.IsNaN(v) || math.IsInf(v, 0)) {
			t.Errorf("%s: %v %v %v", text, v, ok, err)
		}
	}
}

// A value that is no number is passed over, and named.
func TestFigure(t *testing.T) {
	for text, want := range map[string]string{
		"12": "", "NaN": "is no finite number", "-1e999": "is no finite number", `"a"`: "is a text, and a number is expected",
		"[1,{}]": "is a list, and a number is expected", `{"a":1}`: "is an object, and a number is expected",
		"true": "is true or false, and a number is expected", "null": "is null, and a number is expected",
	} {
		s := Scanner{Text: text + ","}
		if v, wrong, err := s.Figure(); wrong != want || err != nil || s.At != len(text) || v != 0 && text != "12" {
			t.Errorf("%s: %v %q %v", text, v, wrong, err)
		}
	}
	if _, _, err := (&Scanner{Text: "x"}).Figure(); err == nil {
		t.Error("x is a figure")
	}
}
