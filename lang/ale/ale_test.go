package ale

import (
	"fmt"
	"strings"
	"testing"

	"pullscore/lang/lines"
	"pullscore/lang/testing/samples"
	"pullscore/lang/timecode"
)

func read(name, src string, rate timecode.Rate) (rows []Row, told string) {
	text, _ := lines.Decode(name, []byte(src))
	var faults lines.Faults
	for row := range Rows(text, rate, &faults) {
		rows = append(rows, row)
	}
	for _, d := range faults.List() {
		told += fmt.Sprintf("%d:%d %s %s; ", d.Range.Start.Line, d.Range.Start.Column, d.Severity, d.Message)
	}
	return rows, told
}

func TestSamples(t *testing.T) {
	type expected struct {
		Heading map[string]string
		Rows    int
		Odd     int `json:"rows_with_fewer_or_more_fields"`
		Clips   []map[string]string
	}
	samples.EachCut(t, "ale/", func(t *testing.T, name string, src []byte, want expected) {
		rows, told := read(name, string(src), timecode.Rate{})
		if len(rows) != want.Rows || strings.Count(told, " fields for ") != want.Odd || strings.Count(told, ";") != want.Odd {
			t.Fatalf("%d rows, want %d; %s, want %d odd rows", len(rows), want.Rows, told, want.Odd)
		}
		rate, err := timecode.ParseRate(want.Heading["FPS"])
		if err != nil {
			t.Fatal(err)
		}
		for i, row := range rows {
			got := map[string]string{
				"Name": row.Name, "Tape": row.Tape, "Scene": row.Scene, "Take": row.Take, "Camera": row.Camera, "Filename": row.Filename, "Clip": row.Clip,
				"Start": rate.Format(row.Start), "End": rate.Format(row.End), "Duration": rate.Format(row.End - row.Start),
			}
			if row.Rate != rate {
				t.Errorf("row %d counts at %s, want %s", i+1, row.Rate, rate)
			}
			for column, value := range want.Clips[i] {
				if column == "Duration" && value == "" {
					continue // not in the file
				}
				if got[column] != value {
					t.Errorf("row %d: %s is %q, want %q", i+1, column, got[column], value)
				}
			}
		}
	})
}

// Lists of our own, a rule or a fault each.
func TestRules(t *testing.T) {
	list := func(heading, columns string, rows ...string) string {
		return "Heading\n" + heading + "\n\nColumn\n" + strings.ReplaceAll(columns, ",", "\t") + "\n\nData\n" + strings.ReplaceAll(strings.Join(rows, "\n"), ",", "\t")
	}
	const (
		tabs = "FIELD_DELIM\tTABS"
		at   = "01:00:00:00,01:00:02:00"
	)
	for _, c := range []struct{ name, rate, src, want string }{
		{"a row", "24", list(tabs, "Name,Start,End", "27A-3,"+at), "27A-3 86400-86448@24"},
		{"all columns, in any case", "24", list(tabs, "NAME,scene,TAKE,Tape,CAMERA,start,END,clip,Filename,source file", "n,27A,3,t,A,"+at+",c,f,s"),
			"n 86400-86448@24 scene 27A take 3 tape t camera A clip c file f source s"},
		{"camera roll for the tape", "24", list(tabs, "Name,Tape,Camroll,Reel,Start,End", "n,,A007,R,"+at, "m,,,R,"+at), "n 86400-86448@24 tape A007; m 86400-86448@24 tape R"},
		{"pairs on one line, a rate of the heading", "24", list(tabs+"\tVIDEO_FORMAT\t1080\tFPS\t25", "Name,Start,End", "n,00:00:00:24,00:00:01:00"), "n 24-25@25"},
		{"a rate of the row", "24", list(tabs+"\nFPS\t25", "Name,Start,End,FPS", "n,"+at+",23.98", "m,"+at+","), "n 86400-86448@23.976; m 90000-90050@25"},
		{"drop-frame by semicolons", "24", list(tabs+"\nFPS\t29.97", "Name,Start,End", "n,00:01:00;02,00:01:00;03", "m,00:01:00:02,00:01:00:03"), "n 1800-1801@29.97df; m 1802-1803@29.97"},
		{"drop-frame by the plan", "29.97df", list(tabs+"\nFPS\t29.97", "Name,Start,End", "n,00:01:00:02,00:01:00:03"), "n 1800-1801@29.97df"},
		{"blank lines everywhere, CR LF, a mark", "24", "\xEF\xBB\xBF" + strings.ReplaceAll("\nHeading\n\n"+tabs+"\n\n\nColumn\n\nName\tStart\tEnd\n\n\nData\n\nn\t01:00:00:00\t01:00:02:00\n\n", "\n", "\r\n"), "n 86400-86448@24"},
		{"fewer fields and more", "24", list(tabs, "Name,Start,End,Take,Scene", "n,"+at, "m,"+at+",1,2,x", "o,"+at+",1,2,,"),
			"n 86400-86448@24; m 86400-86448@24 scene 2 take 1; o 86400-86448@24 scene 2 take 1 / 8:1 note row 1 has 3 fields for 5 columns; 9:1 note row 2 has 6 fields for 5 columns; "},
		{"no start, no end", "24", list(tabs, "Name,Start,End", "n,,01:00:00:00", "m,01:00:00:00,", "o,"+at),
			"o 86400-86448@24 / 8:1 warning row 1 has no Start; 9:1 warning row 2 has no End; "},
		{"no such frame", "25", list(tabs, "Name,Start,End", "n,19:42:28:25,19:42:30:00", "m,noon,"+at), " / 8:3 error Start 19:42:28:25 has no such frame at 25; 9:1 note row 2 has 4 fields for 3 columns; 9:3 error Start noon is no timecode; "},
		{"backwards", "24", list(tabs, "Name,Start,End", "n,01:00:02:00,01:00:00:00"), " / 8:15 warning row 1 ends before it starts; "},
		{"commas", "24", list("FIELD_DELIM\tCOMMA", "Name,Start,End", "n,"+at), " / 2:13 error FIELD_DELIM is COMMA, and tabs are read; "},
		{"no such rate", "24", list(tabs+"\nFPS\t12", "Name,Start,End,FPS", "n,"+at+",12", "m,"+at+",25"), "n 86400-86448@24; m 90000-90050@25 / 3:5 warning FPS 12 is no rate that Pullscore knows; "},
		{"no columns", "24", "Heading\n" + tabs + "\n", " / 1:1 error this file has no Column line; "},
		{"no data", "24", "Heading\n" + tabs + "\nColumn\nName\n", " / 1:1 error this file has no Data line; "},
		{"nothing", "24", "", " / 1:1 error this file has no Column line; "},
		{"no rows", "24", list(tabs, "Name,Start,End"), ""},
		{"a clip that is called Data", "24", list(tabs, "Name,Start,End", "Data", "n,"+at), "n 86400-86448@24 / 8:1 warning row 1 has no Start; 8:1 note row 1 has 1 fields for 3 columns; "},
	} {
		t.Run(c.name, func(t *testing.T) {
			rate, err := timecode.ParseRate(c.rate)
			if err != nil {
				t.Fatal(err)
			}
			rows, told := read("f.ale", c.src, rate)
			var shown []string
			for _, r := range rows {
				s := fmt.Sprintf("%s %d-%d@%s", r.Name, r.Start, r.End, r.Rate)
				for _, f := range [][2]string{{"scene", r.Scene}, {"take", r.Take}, {"tape", r.Tape}, {"camera", r.Camera}, {"clip", r.Clip}, {"file", r.Filename}, {"source", r.SourceFile}} {
					if f[1] != "" {
						s += " " + f[0] + " " + f[1]
					}
				}
				shown = append(shown, s)
			}
			got := strings.Join(shown, "; ")
			if told != "" {
				got += " / " + told
			}
			if got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

// Whatever the file, a line below Data is a row, or something is told of it.
func FuzzRows(f *testing.F) {
	f.Add("Heading\nFIELD_DELIM\tTABS\nFPS\t29.97\nColumn\nName\tStart\tEnd\tFPS\nData\nn\t00:01:00;02\t00:01:00;03\t25\n", 4)
	f.Add("Column\n\t\t\nData\n\t\t", 0)
	f.Fuzz(func(t *testing.T, src string, rate int) {
		rates := timecode.Rates()
		rows, told := read("f.ale", src, rates[((rate%len(rates))+len(rates))%len(rates)])
		last := 0
		for _, r := range rows {
			if r.End < r.Start || r.Number <= last {
				t.Errorf("%+v", r)
			}
			last = r.Number
		}
		if len(rows) == 0 && told == "" && !strings.Contains(strings.ToLower(src), "data") {
			t.Error("nothing was read, and nothing is told")
		}
	})
}
