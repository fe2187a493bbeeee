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
	"pullscore/lang"
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

// `crop` of the file holds for a camera whose sensor says none, as if it were written there,
// also where the kit that the plan uses says it; what the sensor says wins.
func TestCropOfFile(t *testing.T) {
	ofFile := func(sensor string) string { return "crop 2.5\n" + sensorPlan(sensor) }
	inKit := func(sensor string) (source, kit string) {
		head, rest, _ := strings.Cut(sensorPlan(sensor), "camera A")
		camera, shot, _ := strings.Cut("camera A"+rest, "shot 1")
		return head + "use \"kit.pull\"\nshot 1" + shot, "crop 2.5\n" + camera
	}
	byKit, kit := inKit("36 x 24 mm")
	for _, test := range []struct {
		name string
		got  []string // a plan, and the files it uses
		same string
	}{
		{"of the file", []string{ofFile("36 x 24 mm")}, "36 x 24 mm, crop 2.5"},
		{"of the file, a format", []string{ofFile("fullframe")}, "fullframe, crop 2.5"},
		{"of both", []string{ofFile("36 x 24 mm, crop 1")}, "36 x 24 mm, crop 1"},
		{"of the kit", []string{byKit, "kit.pull", kit}, "36 x 24 mm, crop 2.5"},
	} {
		got := interpret("plan.pull", test.got[0], test.got[1:]...)
		want := interpret("plan.pull", sensorPlan(test.same))
		if len(got.Plan.Shots) != 1 || len(want.Plan.Shots) != 1 {
			t.Fatalf("%s: %d shots: %+v", test.name, len(got.Plan.Shots), got.Findings)
		}
		g, err := json.Marshal(pictureOf(got.Plan.Shots[0]))
		w, _ := json.Marshal(pictureOf(want.Plan.Shots[0]))
		if err != nil || string(g) != string(w) {
			t.Errorf("%s: the shot is\n%s\nwant\n%s %v", test.name, g, w, err)
		}
		kinds := [2][]string{}
		for i, list := range [][]lang.Diagnostic{got.Findings, want.Findings} {
			for _, d := range list {
				kinds[i] = append(kinds[i], d.Code+": "+d.Message)
			}
		}
		if !reflect.DeepEqual(kinds[0], kinds[1]) {
			t.Errorf("%s: told is %q, want %q", test.name, kinds[0], kinds[1])
		}
	}
}

// On the floor of a scene the height of the picture goes by it: 40 cm over the axis is in
// the picture of the whole sensor at 4 m, whose half is 49.8 cm high, and out of one of
// 2.39 to 1, whose half is 27 cm.
func TestCropOfFileOnTheFloor(t *testing.T) {
	const text = "plan \"A picture\"\nrate 24\nuse \"kit.pull\"\n" +
		"scene \"Here\"\n  subject NORA at 4 m upstage, eyes 1.5 m\n  subject LAMP at NORA, 40 cm up\n  NORA: \"So.\", lasting 1 s\n" +
		"shot 1\n  covers all\n  with camera W, lens \"75\", stop f/4\n  camera at 0 m right, 1.5 m high, aims at NORA\n  start on NORA\n"
	const kit = "camera W\n  sensor 24.89 x 18.66 mm\n  on tripod\nlens \"75\"\n  focal 75 mm\n  stops f/2 to f/22\n  closest 75 cm\n  ring 300 deg\n"
	for _, test := range []struct {
		crop   string
		aspect float64
		in     bool
	}{{"", 24.89 / 18.66, true}, {"crop 2.39\n", 2.39, false}} {
		res := interpret("plan.pull", test.crop+text, "kit.pull", kit)
		if len(res.Plan.Shots) != 1 || res.Plan.Shots[0].Staging == nil {
			t.Fatalf("%+v", res.Findings)
		}
		s := res.Plan.Shots[0]
		if math.Abs(float64(s.Aspect)-test.aspect) > 1e-9 {
			t.Errorf("%q: the picture is %v times as wide as high", test.crop, s.Aspect)
		}
		for _, u := range s.Subjects {
			if u.Name == "LAMP" && len(u.InFrame) > 0 != test.in {
				t.Errorf("%q: the lamp is in the picture %v", test.crop, u.InFrame)
			}
		}
	}
}

// pictureOf returns a shot without the lines of the plan on which its parts stand.
func pictureOf(s *plan.Shot) plan.Shot {
	bare := *s
	bare.Line, bare.Pulls, bare.Blocking = 0, nil, nil
	for _, p := range s.Pulls {
		one := *p
		one.Line = 0
		bare.Pulls = append(bare.Pulls, &one)
	}
	return bare
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
