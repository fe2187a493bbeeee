package takes

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// read returns the takes of a log and its faults as text.
func read(t *testing.T, log string) (list []Take, faults []string) {
	t.Helper()
	r := NewReader(strings.NewReader(log), "log.csv")
	for {
		take, err := r.Read()
		var fault *Fault
		switch {
		case errors.Is(err, io.EOF):
			return list, faults
		case errors.As(err, &fault):
			faults = append(faults, fault.Error())
			if !fault.Kept {
				continue
			}
		case err != nil:
			t.Fatal(err)
		}
		list = append(list, take)
	}
}

func TestReader(t *testing.T) {
	plain := Take{Travel: 60, Error: -1.5, Time: 0.8}
	tests := []struct {
		name, log string
		want      []Take
	}{
		{"plain", "travel_deg,error_deg,time_s\n60,-1.5,0.8\n", []Take{plain}},
		{"other order, no line end", "time_s,error_deg,travel_deg\n.8,-1.5,60", []Take{plain}},
		{"byte order mark and CRLF", "\uFEFFtravel_deg,error_deg,time_s\r\n60,-1.5,0.8\r\n", []Take{plain}},
		{"quotes, blanks, capitals", " Travel_deg , \"error_deg\",TIME_S\n \"60\" , -1.5,\t0.8 \n", []Take{plain}},
		{"units that fit", "travel_deg,error_deg,time_s\n60 deg,-1.5°,0.8 s\n", []Take{plain}},
		{"blank lines and rows", "\n\ntravel_deg,error_deg,time_s\n\n60,-1.5,0.8\n\n\n", []Take{plain}},
		{"columns that are not ours", "mood,travel_deg,error_deg,time_s,x\nfine,60,-1.5,0.8,\n", []Take{plain}},
		{"short rows", "travel_deg,error_deg,time_s,note,hit\n60,-1.5,0.8\n", []Take{plain}},
		{"a note of two lines", "travel_deg,error_deg,time_s,note\n60,-1.5,0.8,\"a \"\"b\"\",\nc\"\n60,-1.5,0.8,\n",
			[]Take{{Travel: 60, Error: -1.5, Time: 0.8, Note: "a \"b\",\nc"}, plain}},
		{"all columns", "date,plan,shot,pull,puller,travel_deg,error_deg,time_s,hit,note,rim_mm\n" +
			"2026-03-01T09:30,Pier,4A,2,Ines,60,-1.5,0.8,YES,windy,60\n",
			[]Take{{Date: "2026-03-01", Plan: "Pier", Shot: "4A", Pull: 2, Puller: "Ines", Travel: 60, Error: -1.5, Time: 0.8, Hit: Sharp, Rim: 0.06, Note: "windy"}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, faults := read(t, tt.log)
			for i := range got {
				got[i].Line = 0 // another test looks at it
			}
			if len(faults) > 0 || fmt.Sprintf("%+v", got) != fmt.Sprintf("%+v", tt.want) {
				t.Errorf("%+v, faults %q, want %+v", got, faults, tt.want)
			}
		})
	}
}

// Every fault is told with its line and column, and costs no good row: in each
// log two takes are good.
func TestFaults(t *testing.T) {
	const head, good = "travel_deg,error_deg,time_s,note\n", "60,1,0.8,\n"
	row := func(bad string) string { return head + good + bad + "\n" + good }
	tests := []struct{ name, log, want string }{
		{"text in a number", row("60,far,0.8,"), `log.csv:3:4: error_deg: "far" is no number`},
		{"not a number", row("60,NaN,0.8,"), `log.csv:3:4: error_deg: "NaN" is no number`},
		{"infinite", row("60,1,Inf,"), `log.csv:3:6: time_s: "Inf" is no number`},
		{"too large for a number", row("60,1,1e999,"), `log.csv:3:6: time_s: "1e999" is no number`},
		{"hexadecimal", row("60,0x10,1,"), `log.csv:3:4: error_deg: a number in deg is wanted, and this says "0x10"`},
		{"another unit", row("60,1.5 mm,0.8,"), `log.csv:3:4: error_deg: a number in deg is wanted, and this says "1.5 mm"`},
		{"milliseconds", row("60,1,800,"), `log.csv:3:6: time_s: 800 lies outside 0 to 600 s`},
		{"negative travel", row("-60,1,0.8,"), `log.csv:3:1: travel_deg: -60 lies outside 0 to 7200 deg`},
		{"no time", row("60,1,0,"), `log.csv:3:6: time_s: a movement takes some time, and this says 0`},
		{"missing value", row(",1,0.8,"), `log.csv:3:1: travel_deg is missing`},
		{"short row", row("60,1"), `log.csv:3:4: time_s is missing`},
		{"long row", row("60,1,0.8,,5"), `log.csv:3:11: this row has 5 fields, and the header 4`},
		{"decimal commas", row("60,0,1,5,0,8"), `log.csv:3:10: this row has 6 fields, and the header 4`},
		{"a quote never closed", row(`60,1,0.8,"windy`), `log.csv:3:10: this quote is never closed`},
		{"a quote in a quoted field", row(`60,1,0.8,"win"dy`), `log.csv:3:15: a quoted field goes on after its closing quote`},
		{"columns count characters", row("60,1,0.8,\"ünüü\"x"), `log.csv:3:16: a quoted field goes on after its closing quote`},
		{"a long line", row("60,1,0.8," + strings.Repeat("x", 300_000)), `log.csv:3:1: this row has more than 64 kB`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, faults := read(t, tt.log)
			if len(faults) != 1 || faults[0] != tt.want {
				t.Errorf("faults %q, want %s", faults, tt.want)
			}
			if len(got) != 2 {
				t.Errorf("%d good rows, want 2", len(got))
			}
		})
	}
}

// A log may have the columns of the set, in any order, and any of them left out:
// what says where a take landed is fitted, all else only counts.
func TestColumnsOfTheSet(t *testing.T) {
	const all = "plan,shot,pull,take,clip,timecode,landed,time_s,hit,result,distance_m,stop,travel_deg,error_deg,rim_mm,puller,date,note\n"
	tests := []struct {
		name, log string
		want      Take
	}{
		{"all of them", all + "Pier,4A,2,3,A001C004,01:02:03:04,,0.8,,buzz,1.72,f/2.8,60,-1.5,80,Ines,2026-03-01,windy\n",
			Take{Plan: "Pier", Shot: "4A", Pull: 2, Time: 0.8, Hit: Missed, Travel: 60, Error: -1.5, Rim: 0.08, Puller: "Ines", Date: "2026-03-01", Note: "windy", Line: 2, OnSet: "3", Clip: "A001C004", Timecode: "01:02:03:04"}},
		{"no landing", all + "Pier,4A,2,3,,,,0.8,,sharp,,,,,,,,\n", Take{Plan: "Pier", Shot: "4A", Pull: 2, Time: 0.8, Hit: Sharp, Unmeasured: true, Line: 2, OnSet: "3"}},
		{"a result alone", "result,shot,pull\nlate,4A,1\n", Take{Shot: "4A", Pull: 1, Hit: Missed, Unmeasured: true, Line: 2}},
		{"hit wins over result", "pull,hit,shot,result\n1,yes,4A,EARLY\n", Take{Shot: "4A", Pull: 1, Hit: Sharp, Unmeasured: true, Line: 2}},
		{"a row of one column", "hit\n\nno\n", Take{Hit: Missed, Unmeasured: true, Line: 3}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, faults := read(t, tt.log)
			if len(faults) > 0 || len(got) != 1 || got[0] != tt.want {
				t.Errorf("%+v, faults %q, want %+v", got, faults, tt.want)
			}
		})
	}
	if _, faults := read(t, "result\nfine\n"); len(faults) != 1 || faults[0] != `log.csv:2:1: result: "fine" is none of sharp, early, late and buzz` {
		t.Errorf("faults %q", faults)
	}
}

// A header that cannot be used is told once.
func TestHeaderFaults(t *testing.T) {
	tests := []struct{ log, want string }{
		{"", "log.csv:1:1: the log is empty: its first row names the columns"},
		{"travel_deg,note\n60,x\n", "log.csv:1:1: the log has no column error_deg and no time_s"},
		{"shot,landed,time_s\n4,1 m,1\n", "log.csv:1:1: the log has no column pull"},
		{"60,1,0.8\n60,1,0.8\n", "log.csv:1:1: the log has no column travel_deg and no error_deg and no time_s: its first row names the columns, and here it has numbers"},
		{"travel_deg;error_deg;time_s\n60;1;0,8\n", "log.csv:1:1: the log has no column travel_deg and no error_deg and no time_s: its fields are divided by semicolons, and commas are wanted"},
		{"time_s,travel_deg,error_deg,time_s\n", "log.csv:1:29: column time_s is here twice"},
		{"\xFF\xFEt\x00", "log.csv:1:1: this is text of 16 bits a character: save it as UTF-8"},
	}
	for _, tt := range tests {
		got, faults := read(t, tt.log)
		if len(got) != 0 || len(faults) != 1 || faults[0] != tt.want {
			t.Errorf("%q: %d takes, faults %q, want %s", tt.log, len(got), faults, tt.want)
		}
	}
}

// What is appended is read back as it was, also to a log that has columns of
// its own.
func TestAppendReadsBack(t *testing.T) {
	dir := t.TempDir()
	text := rapid.StringMatching(`[ -~äß\n"',=]{0,12}`)
	rapid.Check(t, func(t *rapid.T) {
		path := filepath.Join(dir, fmt.Sprint(rapid.Uint64().Draw(t, "name"))+".csv")
		old := rapid.SampledFrom([]string{"", "note,time_s,travel_deg,error_deg", "hit,error_deg,time_s,x,travel_deg,rim_mm\n"}).Draw(t, "old log")
		if err := os.WriteFile(path, []byte(old), 0o600); err != nil {
			t.Fatal(err)
		}
		want := Take{
			Travel: math.Round(rapid.Float64Range(0, 400).Draw(t, "travel")*1000) / 1000,
			Error:  math.Round(rapid.Float64Range(-30, 30).Draw(t, "error")*1000) / 1000,
			Time:   math.Round(rapid.Float64Range(0.01, 30).Draw(t, "time")*1e4) / 1e4,
			Hit:    rapid.SampledFrom([]Hit{Unsaid, Missed, Sharp}).Draw(t, "hit"),
			Note:   strings.TrimSpace(text.Draw(t, "note")),
		}
		for range 2 {
			if err := AppendFile(path, want); err != nil {
				t.Fatal(err)
			}
		}
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		r := NewReader(bytes.NewReader(data), "log.csv")
		for range 2 {
			got, err := r.Read()
			if err != nil {
				t.Fatalf("%v in %q", err, data)
			}
			if got.Travel != want.Travel || got.Error != want.Error || got.Time != want.Time {
				t.Fatalf("%+v, want %+v", got, want)
			}
			if old == "" && (got.Note != want.Note || got.Hit != want.Hit) {
				t.Fatalf("%+v, want %+v", got, want)
			}
		}
		if _, err := r.Read(); !errors.Is(err, io.EOF) {
			t.Fatalf("after the takes: %v", err)
		}
	})
}

// A million rows are read in memory that does not grow with them.
func TestMillionRows(t *testing.T) {
	if testing.Short() {
		t.Skip("a million rows take seconds")
	}
	const rows = 1_000_000
	block := []byte("60,1.25,0.81\n30,-0.4,0.55\nx,1,1\n110,2.2,1.207\n")
	log := io.MultiReader(strings.NewReader("travel_deg,error_deg,time_s\n"), io.LimitReader(&repeater{block: block}, int64(len(block)*rows/4)))
	s := NewSample(Options{})
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	faults, err := s.ReadLog(NewReader(log, "log.csv"))
	runtime.GC()
	runtime.ReadMemStats(&after)
	if err != nil || s.Scores.N != rows*3/4 || faults.Lost != rows/4 || len(faults.List) != maxFaults {
		t.Fatalf("%d takes, %d lost, %d told: %v", s.Scores.N, faults.Lost, len(faults.List), err)
	}
	if grown := int64(after.HeapAlloc) - int64(before.HeapAlloc); grown > 16<<20 {
		t.Errorf("the heap has grown by %d MB", grown>>20)
	}
	runtime.KeepAlive(s)
}

// A repeater gives its block for ever.
type repeater struct {
	block []byte
	at    int
}

func (r *repeater) Read(p []byte) (n int, err error) {
	for n < len(p) {
		k := copy(p[n:], r.block[r.at:])
		n += k
		r.at = (r.at + k) % len(r.block)
	}
	return n, nil
}

func TestParseLength(t *testing.T) {
	tests := []struct {
		text string
		want float64
	}{
		{"1.72 m", 1.72}, {"172cm", 1.72}, {"5'6\"", 1.6764}, {"5' 6.5\"", 1.6891}, {"5 ft 6 in", 1.6764}, {"5'-6\"", 1.6764},
		{"66 in", 1.6764}, {"6′", 1.8288}, {"infinity", math.Inf(1)}, {"∞", math.Inf(1)},
		{"1.7", math.NaN()}, {"5 6", math.NaN()}, {"6\"5'", math.NaN()}, {"-1 m", math.NaN()}, {"0 m", math.NaN()},
		{"1 m 20 cm", math.NaN()}, {"1 x", math.NaN()}, {"", math.NaN()}, {"m", math.NaN()}, {"nan m", math.NaN()}, {"1e400 m", math.NaN()},
	}
	for _, tt := range tests {
		got, err := ParseLength(tt.text, "")
		if err != nil {
			got = math.NaN()
		}
		if math.Abs(got-tt.want) > 1e-12 || math.IsNaN(got) != math.IsNaN(tt.want) {
			t.Errorf("%q: %v (%v), want %v", tt.text, got, err, tt.want)
		}
	}
}

// Whatever a log holds, reading it ends, every place is in it, and every take
// is one that can be fitted.
func FuzzReader(f *testing.F) {
	for _, seed := range []string{
		Header + "2026-03-01,Pier,4A,2,Ines,60,-1.5,0.8,yes,\n", "travel_deg,error_deg,time_s\n60,1,\"0.8\n60,1,1\n",
		"\uFEFFshot,pull,landed,time_s\r\n4,1,5'6\",1\r\n", "\"\n\n\",,\"\"\"", "a,b\r\r\n\"x\"\r\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		lines := bytes.Count(data, []byte{'\n'}) + 1
		r := NewReader(bytes.NewReader(data), "log.csv")
		for range len(data) + 2 {
			take, err := r.Read()
			var fault *Fault
			switch {
			case errors.Is(err, io.EOF):
				return
			case errors.As(err, &fault):
				if fault.Line < 1 || fault.Line > lines || fault.Column < 1 || fault.Column > len(data)+1 {
					t.Fatalf("%v in a log of %d lines", fault, lines)
				}
			case err != nil:
				t.Fatal(err)
			case !take.Unmeasured && !(take.Travel >= 0 && take.Time > 0 && math.Abs(take.Error) <= maxError):
				t.Fatalf("%+v", take)
			}
		}
		t.Fatal("reading does not end")
	})
}
