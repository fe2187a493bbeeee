package interp_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	"pullscore/interp/plan"
)

// sensorPlan is a plan with a sensor, and a person who leaves the picture of a narrow one.
func sensorPlan(sensor string) string {
	return "plan \"A picture\"\nrate 24\nwatched on 12 m screen from 18 m\n" +
		"subject NORA at 2 m\nsubject LAMP at 1.1 m, 20 cm left\n" +
		"camera A\n  sensor " + sensor + "\n  records 900 px\n  on tripod\n" +
		"lens \"50\"\n  focal 50 mm\n  stops f/1.8 to f/22\n  closest 45 cm\n  ring 300 deg, diameter 110 mm\n" +
		"shot 1\n  with stop f/2.8\n  start on NORA\n  pause 1 s\n  rack to LAMP, over 1 s, because \"so\"\n  hold 1 s\n"
}

// picturedShot returns the one shot of a plan, and what is told of it.
func picturedShot(t *testing.T, source string) (*plan.Shot, []string) {
	t.Helper()
	res := interpret("plan.pull", source)
	if len(res.Plan.Shots) != 1 {
		t.Fatalf("%d shots: %+v", len(res.Plan.Shots), res.Findings)
	}
	var told []string
	for _, d := range res.Findings {
		told = append(told, d.Code+": "+d.Message)
	}
	return res.Plan.Shots[0], told
}

// A sensor by its name, or cropped, is like one of that size in millimetres: in its
// criterion with the pixels across it, its frame and every figure of a pull.
func TestPictureByNameAndCrop(t *testing.T) {
	for _, test := range []struct{ sensor, same string }{
		{"fullframe", "36 x 24 mm"},
		{"fullframe, crop 1", "24 x 24 mm"},
		{"36 x 24 mm, crop 2.5", "36 x 14.4 mm"},
		{"2/3 in type 16:9", "9.59 x 5.39 mm"},
		{"super35 4-perf, crop 0.5", "9.33 x 18.66 mm"},
	} {
		got, told := picturedShot(t, sensorPlan(test.sensor))
		want, toldToo := picturedShot(t, sensorPlan(test.same))
		got.Sensor.Format, got.Sensor.Source = "", ""
		if !reflect.DeepEqual(told, toldToo) {
			t.Errorf("%s: told is\n%s\nwant\n%s", test.sensor, strings.Join(told, "\n"), strings.Join(toldToo, "\n"))
		}
		g, err := json.Marshal(got)
		w, _ := json.Marshal(want)
		if err != nil || string(g) != string(w) {
			t.Errorf("%s: the shot is\n%s\nwant\n%s %v", test.sensor, g, w, err)
		}
	}
	if s, _ := picturedShot(t, sensorPlan("fullframe, crop 1")); math.Abs(float64(s.CriterionMM)-24.0/900) > 1e-12 {
		t.Errorf("900 px across the picture of 24 mm give %v mm", s.CriterionMM)
	}
}

// Every format of testdata/lens-formats.tsv can be written in a plan.
func TestFormatsInPlans(t *testing.T) {
	table, err := os.ReadFile("../testdata/lens-formats.tsv")
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for line := range strings.Lines(string(table)) {
		cells := strings.Split(line, "\t")
		if cells[0] == "name" {
			continue
		}
		rows++
		s, _ := picturedShot(t, sensorPlan(cells[0]))
		size := fmt.Sprintf("%.2f %.2f", float64(s.Sensor.WidthMM), float64(s.Sensor.HeightMM))
		if size != cells[1]+" "+cells[2] || s.Sensor.Format != cells[0] || s.Sensor.Source != cells[4] {
			t.Errorf("%s is %+v", cells[0], s.Sensor)
		}
	}
	if rows != 24 {
		t.Errorf("%d rows", rows)
	}
}
