package recorded

import (
	"errors"
	"io"
	"math"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"pullscore/interp/takes"
	"pullscore/lang/testing/samples"
	"pullscore/lang/timecode"
)

// distances reads a recording to its end, with the faults of single frames.
func distances(text string, opt Options) (numbers []int64, metres []float64, faults []string, err error) {
	if opt.Rate, err = timecode.ParseRate("24"); err != nil {
		return nil, nil, nil, err
	}
	src, err := open(strings.NewReader(text), "clip", opt, math.NaN())
	if err != nil {
		return nil, nil, nil, err
	}
	for {
		f, err := src.next()
		var fault *takes.Fault
		switch {
		case errors.Is(err, io.EOF):
			return numbers, metres, faults, nil
		case errors.As(err, &fault):
			faults = append(faults, fault.Error())
			continue
		case err != nil:
			return numbers, metres, faults, err
		}
		numbers = append(numbers, f.number)
		metres = append(metres, math.Round(f.metres*1e6)/1e6)
	}
}

// The samples hold what is expected of them, and ask for what they lack.
func TestSampleTables(t *testing.T) {
	type expected struct {
		Metres    []float64 `json:"metres"`
		Ends      []float64 `json:"with_--unit_mm"`
		Frames    int       `json:"frames"`
		Delimiter string    `json:"delimiter"`
		UnitsRow  int       `json:"units_row"`
	}
	asks := map[string]string{
		"frames-only.csv": "clip:1:1: the table counts frames: say with --at 14:20:10:00 at which timecode it begins",
		"units-row.csv":   "clip:1:1: the table counts frames: say with --at 14:20:10:00 at which timecode it begins",
		"unitless-mm.csv": "clip:2:19: \"410\" lacks its unit: name it in the header as in focus_mm, or with --unit\n" +
			"As mm the focus goes from 0.41 m to 0.98 m, as cm from 4.1 m to 9.8 m, as in from 10.41 m to 24.89 m.",
	}
	samples.EachCut(t, "cam/", func(t *testing.T, name string, src []byte, want expected) {
		name = strings.TrimPrefix(name, "cam/")
		opt := Options{}
		if ask := asks[name]; ask != "" {
			if _, _, _, err := distances(string(src), opt); err == nil || err.Error() != ask {
				t.Errorf("%v, want %s", err, ask)
			}
			opt = Options{At: "14:20:10:00"}
			if want.Ends != nil {
				opt = Options{Unit: "mm"}
			}
		}
		numbers, metres, faults, err := distances(string(src), opt)
		if err != nil || len(faults) > 0 {
			t.Fatal(err, faults)
		}
		if want.Ends != nil {
			if len(metres) != want.Frames {
				t.Errorf("%d frames, want %d", len(metres), want.Frames)
			}
			want.Metres, metres = want.Ends, []float64{slices.Min(metres), slices.Max(metres)}
		}
		if !slices.Equal(metres, want.Metres) {
			t.Errorf("%v, want %v", metres, want.Metres)
		}
		if opt.At != "" && numbers[0] != 24*(3600*14+60*20+10) || numbers[1] != numbers[0]+1 {
			t.Errorf("frames %v", numbers)
		}
		rate, _ := timecode.ParseRate("24")
		opt.Rate = rate
		tab, err := newTable(strings.NewReader(string(src)), src, "clip", opt)
		if err != nil || tab.unitsRow != want.UnitsRow || want.Delimiter != "" && string(tab.head.by) != want.Delimiter {
			t.Errorf("%v: row of units %d, want %d; delimiter %q", err, tab.unitsRow, want.UnitsRow, tab.head.by)
		}
	})
}

// Tables are read in all the ways that they are written in.
func TestTables(t *testing.T) {
	wide := func(s string) string {
		var b strings.Builder
		for _, u := range utf16.Encode([]rune("\uFEFF" + s)) {
			b.WriteByte(byte(u >> 8))
			b.WriteByte(byte(u))
		}
		return b.String()
	}
	above := "Clip: A001, take 3\n\"half a quote\n\nLens\t50\n"
	plain := "TC,Focus (m)\n01:00:00:00,1.7\n01:00:00:01,1.75\n"
	tests := []struct {
		name, text string
		opt        Options
		want       []float64
	}{
		{"plain", plain, Options{}, []float64{1.7, 1.75}},
		{"lines above the header", above + plain, Options{}, []float64{1.7, 1.75}},
		{"twenty lines above it", strings.Repeat("a\n", 20) + plain, Options{}, []float64{1.7, 1.75}},
		{"UTF-16", wide(plain), Options{}, []float64{1.7, 1.75}},
		{"tabs and decimal commas", "Master TC\tLens Focus Distance [cm]\tIris\n01:00:00:00\t170,5\t2,8\n01:00:00:01\t\"171\"\t\n", Options{}, []float64{1.705, 1.71}},
		{"commas within a header of semicolons", "Source Timecode;Focus, m, by the tape;focus_mm\n01:00:00:00;1,2,3;1700\n", Options{}, []float64{1.7}},
		{"tabs with decimal points", "CamTC\tFocus\n01:00:00:00\t5'7\"\n01:00:00:01\t1.7 m\n", Options{}, []float64{1.7018, 1.7}},
		{"counts from any number, with gaps", "Frame No.;Focus_mm\n1001;1700\n1004;1800\n", Options{At: "01:00:00:00"}, []float64{1.7, 1.8}},
		{"a row of units", "tc,focus,zoom\nhh:mm:ss:ff,(ft),mm\n01:00:00:00,10,50\n", Options{}, []float64{3.048}},
		{"a row of units that says no length", "tc,focus,zoom\n01:00:00:00,1 m,50\n-,-,-\n", Options{}, []float64{1}},
		{"the unit from outside", "tc,focus\n01:00:00:00,10\n01:00:00:01,2 m\n", Options{Unit: "ft"}, []float64{3.048, 2}},
		{"the header before the unit from outside", plain, Options{Unit: "ft"}, []float64{1.7, 1.75}},
		{"one column of several", "tc,focus_m,Focus (ft)\n01:00:00:00,1,10\n", Options{Column: "focus (FT)"}, []float64{3.048}},
		{"a column of another name", "tc,Motor 2 mm\n01:00:00:00,1700\n", Options{Column: "Motor 2 mm"}, []float64{1.7}},
		{"the column that is called timecode", "Master TC,Timecode,focus_m\nbad,01:00:00:00,1\n", Options{}, []float64{1}},
		{"infinity before a unit is known", "tc,focus\n01:00:00:00,inf\n01:00:00:01,2 m\n", Options{}, []float64{math.Inf(1), 2}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			numbers, metres, faults, err := distances(tt.text, tt.opt)
			faults = slices.DeleteFunc(faults, func(f string) bool { return strings.Contains(f, "\"-\": ") })
			if err != nil || len(faults) > 0 || !slices.Equal(metres, tt.want) {
				t.Fatalf("%v, %v %v, want %v", err, metres, faults, tt.want)
			}
			if numbers[0] != 24*3600 || strings.Contains(tt.name, "gaps") && numbers[1] != numbers[0]+3 {
				t.Errorf("frames %v", numbers)
			}
		})
	}
}

func TestTableFaults(t *testing.T) {
	tests := []struct {
		name, text string
		opt        Options
		want       string
	}{
		{"both decimal signs", "tc;focus_m\n01:00:00:00;1,5\n01:00:00:01;2\n01:00:00:02;1.5\n", Options{},
			"clip:4:13: line 2 writes decimals with a comma and line 4 with a point"},
		{"both in a table without a unit", "tc;focus\n01:00:00:00;1,5\n01:00:00:01;1.5\n", Options{},
			"clip:3:13: line 2 writes decimals with a comma and line 3 with a point"},
		{"no header in time", strings.Repeat("a\n", 21) + "tc,focus_m\n", Options{},
			"clip:1:1: none of the first 21 lines names a column of time, as timecode, and one of focus, as focus_m"},
		{"no such column", "tc,focus_m\n01:00:00:00,1\n", Options{Column: "focus_ft"}, `clip:1:1: the recording has no column "focus_ft"`},
		{"a header that half fits, below others", "one\ntwo,three\n  iris,focus_m\n", Options{}, "clip:3:3: the recording has no column timecode"},
		{"two units", "tc,focus_mm\n-,m\n01:00:00:00,1\n", Options{}, `clip:2:3: the column is called "focus_mm", and this line says m`},
		{"a start for timecode", "tc,focus_m\n", Options{At: "01:00:00:00"}, `clip:1:1: --at is for a table that counts frames, and this one has the column "tc"`},
		{"a start that is none", "frame,focus_m\n", Options{At: "01:00:00:24"}, `--at: timecode "01:00:00:24": frames go from 00 to 23 at 24, not to 24`},
		{"no count", "frame,focus_m\n1.5,1\n", Options{At: "01:00:00:00"}, `clip:2:1: "1.5" is no number of a frame`},
		{"a value as it is written", "tc;focus_m\n01:00:00:00;0,0\n", Options{}, `clip:2:13: "0,0" is no distance`},
		{"one value without a unit", "tc,focus\n01:00:00:00,1 m\n01:00:00:01,2\n", Options{}, `clip:3:13: "2" lacks its unit, and the values above have one`},
		{"a value that no unit makes likely", "tc,focus\n01:00:00:00,1e9\n", Options{}, `clip:2:13: "1e9" lacks its unit: name it in the header as in focus_mm, or with --unit`},
		{"thousands", "tc,focus_mm\n01:00:00:00,\"1,700\"\n", Options{}, `clip:2:13: "1,700" has no unit of length`},
		{"an encoder without a ring", `{"timing":{"timecode":{"hours":1}},"lens":{"encoders":{"focus":1}}}`, Options{},
			"clip:1:1: the sample has lens.encoders.focus and no lens.focusDistance: without a plan nothing says where on the ring a distance lies"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, _, faults, err := distances(tt.text, tt.opt)
			got := strings.Join(faults, "\n")
			if err != nil {
				got = err.Error()
			}
			if got != tt.want {
				t.Errorf("%s, want %s", got, tt.want)
			}
		})
	}
}
