package opentrackio

import (
	"encoding/json"
	"errors"
	"io"
	"math"
	"runtime"
	"strings"
	"testing"
	"testing/iotest"

	"pgregory.net/rapid"

	"pullscore/lang/testing/samples"
)

// read reads a file to its end.
func read(t testing.TB, text string) (list []*Sample, faults []string) {
	t.Helper()
	r := NewReader(strings.NewReader(text), "f")
	for n := 0; ; n++ {
		s, err := r.Next()
		var fault *Fault
		switch {
		case err == io.EOF:
			return list, faults
		case errors.As(err, &fault):
			faults = append(faults, fault.Error())
		case err != nil:
			t.Fatal(err)
		default:
			list = append(list, s)
			for _, d := range s.Faults {
				faults = append(faults, (&Fault{d}).Error())
			}
		}
		if n > len(text)+2 {
			t.Fatalf("no end in sight: %q", text)
		}
	}
}

// The samples of the form's authors say what they say. Those with a lens have
// these values in all of them.
func TestPublishedSamples(t *testing.T) {
	type expected struct {
		Distance *float64 `json:"lens.focusDistance_m"`
	}
	samples.Each(t, "opentrackio/", func(t *testing.T, _ string, src []byte, want expected) {
		list, faults := read(t, string(src))
		if want.Distance == nil {
			return // it is the schema
		}
		if len(list) != 1 || len(faults) > 0 {
			t.Fatalf("%d samples, %v", len(list), faults)
		}
		s := list[0]
		if s.Lens.FocusDistance.Value != *want.Distance || s.Lens.Encoder.Value != 0.1 || s.Lens.FStop.Value != 4 || s.Lens.PupilOffset.Value != 0.123 || s.Lens.Pinhole.Value != 24.305 {
			t.Errorf("%+v", s.Lens)
		}
		if !s.Time.Given || s.Time.Hours.Value != 1 || s.Time.Frame.Value != 4 || s.Time.Rate.Num.Value != 24000 || s.Version != "0.9.3" {
			t.Errorf("%+v %s", s.Time, s.Version)
		}
	})
}

// Of a field that the schema of the form describes, the schema's bounds are ours.
func TestSchemaKnowsTheFields(t *testing.T) {
	var schema map[string]any
	if err := json.Unmarshal(samples.Read(t, "opentrackio/schema.json"), &schema); err != nil {
		t.Fatal(err)
	}
	found := 0
	var walk func(path string, node map[string]any)
	walk = func(path string, node map[string]any) {
		fields, _ := node["properties"].(map[string]any)
		for key, v := range fields {
			walk(strings.TrimPrefix(path+"."+key, "."), v.(map[string]any))
		}
		_, may := new(Sample).number(path)
		to, _ := new(Sample).number(path)
		if to == nil {
			return
		}
		found++
		if low, ok := node["exclusiveMinimum"].(float64); ok && (low != may.min || !may.above) {
			t.Errorf("%s is above %v, here %+v", path, low, may)
		}
		// A sensor of no width is none, so 0 is refused where the schema lets it pass.
		if low, ok := node["minimum"].(float64); ok && low != may.min && !strings.Contains(path, "activeSensor") {
			t.Errorf("%s is from %v on, here %+v", path, low, may)
		}
		if high, ok := node["maximum"].(float64); ok && high != may.max && high < math.MaxInt32 {
			t.Errorf("%s is up to %v, here %+v", path, high, may)
		}
		if whole := node["type"] == "integer"; whole != may.whole {
			t.Errorf("%s is whole: %v, here %+v", path, whole, may)
		}
	}
	walk("", schema)
	if found != 24 {
		t.Errorf("the schema has %d of the 24 fields that are read here", found)
	}
}

const one = `{"lens":{"focusDistance":1}}`

func TestForms(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       int
	}{
		{"one", one, 1},
		{"lines", one + "\n" + one + "\r\n\n" + one, 3},
		{"behind a byte order mark", "\uFEFF" + one + "\n" + one, 2},
		{"without line ends", one + one, 2},
		{"a list", "[" + one + ",\n " + one + "]\n", 2},
		{"an empty list", " [ ]", 0},
		{"several lines each", "{\n  \"lens\": {\n    \"focusDistance\": 1\n  }\n}\n{\n \"lens\": {\"focusDistance\": 1\n}}", 2},
		{"nothing", " \n", 0},
	} {
		list, faults := read(t, c.text)
		if len(list) != c.want || len(faults) > 0 {
			t.Errorf("%s: %d samples, want %d; %v", c.name, len(list), c.want, faults)
		}
		for _, s := range list {
			if s.Lens.FocusDistance.Value != 1 {
				t.Errorf("%s: %+v", c.name, s)
			}
		}
	}
}

// A mistake has its place, and costs no sample but its own.
func TestFaults(t *testing.T) {
	deep := `{"x":` + strings.Repeat("[", 200) + strings.Repeat("]", 200) + "}"
	for _, c := range []struct {
		text, fault string
		want        int // samples that are left
	}{
		{`{"lens":{]}` + "\n" + one, "f:1:10: this is no JSON: '}' is expected, and not ']'", 1},
		{one + "\n" + `{"lens":{"focusDistance":` + "\n" + one + "\n" + one, "f:3:28: this sample ends in the middle", 3},
		{one + "\n" + `{"lens":{"focusDistance":1` + "\n" + one, "f:2:26: this sample ends in the middle", 2},
		{one + "\n" + `{"lens":{"focusDis` + "\n" + one, "f:2:19: this is no JSON: a text in quotes holds no line end", 2},
		{one + "\n" + `{"lens":`, "f:2:9: the file ends in the middle", 1},
		{"[" + one, "f:1:30: the file ends in the middle", 1},
		{"[" + one + one + "]", "f:1:30: this is no JSON: ',' is expected, and not '{'", 2},
		{"[" + one + "] 5", "f:1:32: there is more text after the end", 1},
		{one + "\nfar\n" + one, "f:2:1: this is no JSON: '{' is expected, and not 'f'", 2},
		{one + "\n" + deep + "\n" + one, "f:2:105: this sample is nested more than 100 deep", 2},
		{one + "\n" + `{"a":"` + strings.Repeat("x", MaxSample) + "\"}\n" + one, "f:2:1: this sample has more than 1 MB", 2},
		{`{"lens":{"é":1,"focusDistance":"far"}}`, "f:1:32: lens.focusDistance is a text, and a number is expected", 1},
		{`{"lens":{"focusDistance":-1}}`, "f:1:26: lens.focusDistance is 0 or below", 1},
		{`{"lens":{"focusDistance":NaN}}`, "f:1:26: lens.focusDistance is no finite number", 1},
		{`{"lens":{"focusDistance":1e999}}`, "f:1:26: lens.focusDistance is no finite number", 1},
		{`{"lens":{"encoders":{"focus":1.2}}}`, "f:1:30: lens.encoders.focus is 1.2, and goes from 0 to 1", 1},
		{`{"lens":{"rawEncoders":{"focus":0.5}}}`, "f:1:33: lens.rawEncoders.focus is 0.5, and a whole number is expected", 1},
		{`{"lens":7}`, "f:1:9: lens is a number, and an object is expected", 1},
		{`{"static":{"lens":{"model":7}}}`, "f:1:28: static.lens.model is a number, and a text is expected", 1},
	} {
		list, faults := read(t, c.text)
		if len(list) != c.want || len(faults) != 1 || !strings.HasPrefix(faults[0], c.fault) {
			t.Errorf("%.60q: %d samples, want %d; %q, want %s", c.text, len(list), c.want, faults, c.fault)
		}
	}
}

// A field that is null is not given.
func TestNull(t *testing.T) {
	list, faults := read(t, `{"lens":{"focusDistance":null,"encoders":null}}`)
	if len(faults) > 0 || list[0].Lens.FocusDistance.Given() {
		t.Errorf("%+v %v", list[0], faults)
	}
}

// What the library of JSON writes is read back, however it is laid out and
// however little of the file arrives at once.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		var want []float64
		list := rapid.Bool().Draw(t, "list")
		indent := rapid.SampledFrom([]string{"", " ", "\t"}).Draw(t, "indent")
		n := rapid.IntRange(0, 5).Draw(t, "samples")
		for i := range n {
			d := rapid.Float64Range(0.1, 1e4).Draw(t, "distance")
			note := rapid.String().Draw(t, "note")
			text, err := json.MarshalIndent(map[string]any{"lens": map[string]any{"focusDistance": d}, "tracker": map[string]any{"notes": note, "x": []any{map[string]any{}, "[{"}}}, "", indent)
			if err != nil {
				t.Fatal(err)
			}
			want = append(want, d)
			if list && i > 0 {
				b.WriteString(",")
			}
			b.Write(text)
			b.WriteString(rapid.SampledFrom([]string{"", "\n"}).Draw(t, "end"))
		}
		text := b.String()
		if list {
			text = "[" + text + "]"
		}
		r := NewReader(iotest.OneByteReader(strings.NewReader(text)), "f")
		for _, d := range want {
			s, err := r.Next()
			if err != nil || s.Lens.FocusDistance.Value != d || len(s.Faults) > 0 {
				t.Fatalf("%q: %+v %v, want %v", text, s, err, d)
			}
		}
		if s, err := r.Next(); err != io.EOF {
			t.Fatalf("%q: %+v %v", text, s, err)
		}
	})
}

// A reading that fails ends the samples.
func TestReadError(t *testing.T) {
	broken := errors.New("gone")
	r := NewReader(io.MultiReader(strings.NewReader(one+`{"lens"`), iotest.ErrReader(broken)), "f")
	if _, err := r.Next(); err != nil {
		t.Fatal(err)
	}
	if _, err := r.Next(); !errors.Is(err, broken) {
		t.Errorf("%v", err)
	}
}

// A long recording takes no more memory than a short one.
func TestMemory(t *testing.T) {
	line := strings.Repeat(" ", 1000) + one + "\n" // far less than a reader asks for at once
	const lines = 64 << 10                         // 64 MB
	n := 0
	r := NewReader(readerOf(func() string {
		if n++; n > lines {
			return ""
		}
		return line
	}), "f")
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	count, most := 0, uint64(0)
	for {
		if _, err := r.Next(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		if count++; count%8192 == 0 {
			runtime.GC()
			runtime.ReadMemStats(&after)
			most = max(most, after.HeapAlloc)
		}
	}
	if count != lines {
		t.Errorf("%d samples", count)
	}
	if grown := int64(most) - int64(before.HeapAlloc); grown > 4<<20 {
		t.Errorf("%d MB", grown>>20)
	}
}

// A readerOf gives pieces until one is empty.
type readerOf func() string

func (r readerOf) Read(p []byte) (int, error) {
	piece := r()
	if piece == "" {
		return 0, io.EOF
	}
	return copy(p, piece), nil
}

// Whatever a file holds, it is read to its end. An object that the library of
// JSON reads is a sample.
func FuzzRead(f *testing.F) {
	for _, text := range []string{one, "[" + one + "," + one + "]", one + "\n{\"lens\":{\n" + one, "\uFEFF{\"timing\":{\"timecode\":{\"hours\":1,\"frameRate\":{\"num\":24,\"denom\":1}}}}", `{"static":{"camera":{"isoSpeed":NaN}}}`} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		list, faults := read(t, text)
		if strings.HasPrefix(text, "{") && json.Valid([]byte(text)) && len(list) != 1 && !strings.Contains(strings.Join(faults, ""), tooDeep) {
			t.Errorf("%q: %d samples, %q", text, len(list), faults)
		}
	})
}
