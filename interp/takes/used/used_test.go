package used

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
)

// pier is a plan with two racks, which land at 3 s and 6 s, and a shot that no list has.
const pier = `plan "Pier"
rate 25
edit "own.edl"
watched on 12 m screen from 18 m
camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/22
  closest 75 cm
  ring 200 deg, diameter 100 mm
subject INES at 1.6 m
subject BOAT at 2.9 m
with camera A, lens "75", stop f/4
shot 4A
  start on INES
  rack to BOAT, on 2 s, over 1 s, because "she looks up"
  rack to INES, on 5 s, over 1 s, because "she turns back"
  hold 4 s
shot 4B
  start on INES
  hold 2 s
`

// event is an event of a list; in the source, the shot begins at 10:00:00:00.
func event(clip, source, record string) string {
	return fmt.Sprintf("001  4A  V  C  %s %s\n* FROM CLIP NAME: %s\n", source, record, clip)
}

// whole shows all of the shot.
var whole = event("4A", "10:00:00:00 10:00:10:00", "01:00:00:00 01:00:10:00")

// cutPlan is the plan with a list in place of its own.
func cutPlan(t *testing.T, list string) *plan.Plan {
	t.Helper()
	files := map[string]string{
		"own.edl": "TITLE: OWN\nFCM: NON-DROP FRAME\n" + event("4A", "09:00:00:00 09:00:01:00", "05:00:00:00 05:00:01:00"),
		"cut.edl": "TITLE: CUT\nFCM: NON-DROP FRAME\n" + list,
	}
	res := interp.Interpret("pier.pull", []byte(pier), interp.Options{Against: "cut.edl", ReadFile: func(path string) ([]byte, error) {
		if text, ok := files[path]; ok {
			return []byte(text), nil
		}
		return nil, fs.ErrNotExist
	}})
	if len(res.Plan.Shots) != 2 {
		t.Fatalf("%+v", res.Findings)
	}
	return res.Plan
}

// logged reads a log of rows.
func logged(t *testing.T, p *plan.Plan, rows string) []Log {
	t.Helper()
	l := Log{Name: "ines.csv"}
	in := strings.NewReader("plan,shot,pull,take,clip,timecode,travel_deg,error_deg,time_s,result,note\n" + rows)
	faults, err := takes.ReadLog(takes.NewReader(in, "ines.csv", p), func(t takes.Take) { l.Takes = append(l.Takes, t) })
	if err != nil || faults.N > 0 {
		t.Fatal(err, faults.Places())
	}
	return []Log{l}
}

// told sums a report up: of each rack where it lies, the take, how it looks and what
// else was sharp.
func told(r *Report) (list []string) {
	for i := range r.Racks {
		u := &r.Racks[i]
		list = append(list, fmt.Sprintf("%s %d %s-%s take %s line %d %s %v", u.Shot, u.Pull, u.RecordIn[6:], u.RecordOut[6:], u.Take, u.Line, u.Sharp, u.Others))
	}
	return list
}

func TestWhichTakeTheCutUses(t *testing.T) {
	tests := []struct {
		name, list, rows string
		want             []string
	}{
		{"by timecode", whole, "" +
			",4A,1,1,,09:40:03:00,40,9,1,,\n" +
			",4A,1,2,,10:00:03:04,40,0.1,1,,\n" + // four frames late
			",4A,2,1,,09:40:06:00,40,0.2,1,,\n" +
			",4A,2,2,,10:00:06:00,40,-9,1,,\n" +
			",4A,2,3,,11:40:06:00,40,0.1,1,,\n",
			[]string{"4A 1 02:00-03:00 take 2 line 3 yes []", "4A 2 05:00-06:00 take 2 line 5 no [3 1]"}},
		{"no timecode, and only the name of the shot", whole, ",4A,1,1,4A,,40,0.1,1,,\n,4A,2,1,,,40,0.1,1,,\n",
			[]string{"4A 1 02:00-03:00 take  line 0 unknown []", "4A 2 05:00-06:00 take  line 0 unknown []"}},
		{"by the name of the clip", event("4A_T2", "10:00:00:00 10:00:10:00", "01:00:00:00 01:00:10:00"), "" +
			",4A,1,1,4A_T1,10:00:03:00,40,0.1,1,,\n" + // the name wins over the timecode
			",4A,1,2,4a_t2.mov,,40,9,1,,\n",
			[]string{"4A 1 02:00-03:00 take 2 line 3 no [1]", "4A 2 05:00-06:00 take 2 line 0 unknown []"}},
		{"by a name that tells no take", event("A001C004", "10:00:00:00 10:00:10:00", "01:00:00:00 01:00:10:00"), "" +
			",4A,1,1,A001C003,10:00:03:00,40,0.1,1,,\n" + // the name wins over the timecode
			",4A,1,2,a001c004.mov,,40,9,1,,\n",
			[]string{"4A 1 02:00-03:00 take 2 line 3 no [1]", "4A 2 05:00-06:00 take  line 0 unknown []"}},
		{"the last of two rows of one landing", whole, ",4A,1,,,10:00:03:00,40,9,1,,\n,4A,1,,,10:00:03:00,40,0.1,1,,\n",
			[]string{"4A 1 02:00-03:00 take  line 3 yes []", "4A 2 05:00-06:00 take  line 0 unknown []"}},
		{"a result without a landing", whole, ",4A,1,7,,10:00:03:00,,,,late,\n,4A,2,7,,10:00:06:00,40,0.1,1,,\n",
			[]string{"4A 1 02:00-03:00 take 7 line 2 no []", "4A 2 05:00-06:00 take 7 line 3 yes []"}},
		{"cut before it lands", event("4A", "10:00:00:00 10:00:05:12", "01:00:00:00 01:00:05:12"), ",4A,2,2,,10:00:06:00,40,0.1,1,,\n",
			[]string{"4A 1 02:00-03:00 take  line 0 unknown []", "4A 2 05:00-05:12 take 2 line 2 part []"}},
		{"late, and the cut comes first", event("4A", "10:00:00:00 10:00:06:04", "01:00:00:00 01:00:06:04"), ",4A,2,2,,10:00:06:20,40,0.1,1,,\n",
			[]string{"4A 1 02:00-03:00 take  line 0 unknown []", "4A 2 05:00-06:00 take 2 line 2 part []"}},
		{"removed", event("4A", "10:00:00:00 10:00:04:00", "01:00:00:00 01:00:04:00"), ",4A,1,2,,10:00:03:00,40,0.1,1,,\n",
			[]string{"4A 1 02:00-03:00 take 2 line 2 yes []"}},
		{"shown twice", whole + event("4A", "10:00:00:00 10:00:04:00", "01:00:20:00 01:00:24:00"), ",4A,1,2,,10:00:03:00,40,0.1,1,,\n",
			[]string{"4A 1 02:00-03:00 take 2 line 2 yes []", "4A 1 22:00-23:00 take 2 line 2 yes []", "4A 2 05:00-06:00 take  line 0 unknown []"}},
		{"tries on the page, other films, no such pull", whole, ",4A,1,2,,10:00:03:00,40,0.1,1,,\"page, keys\"\nQuay,4A,1,2,,10:00:03:00,40,0.1,1,,\n",
			[]string{"4A 1 02:00-03:00 take  line 0 unknown []", "4A 2 05:00-06:00 take  line 0 unknown []"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := cutPlan(t, tt.list)
			r := Of(logged(t, p, tt.rows), p, "cut.edl")
			if got := told(r); !slices.Equal(got, tt.want) {
				t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(tt.want, "\n"))
			}
			if !slices.Equal(r.Not, []string{"4B"}) {
				t.Errorf("not in the cut: %v", r.Not)
			}
			if n := r.Sharp + r.Soft + r.Part + r.Unjudged + r.Unlogged; n != len(r.Racks) {
				t.Errorf("%d of %d racks are counted", n, len(r.Racks))
			}
		})
	}
}

// The take that the cut knows counts, and not the timecode; what is told of the landing is
// what the log has.
func TestTheTakeOfThePiece(t *testing.T) {
	p := cutPlan(t, whole)
	p.Shots[0].Pieces[0].Take = "3"
	r := Of(logged(t, p, ",4A,1,2,,10:00:03:00,40,0.1,1,,\n,4A,1,03,,,40,9,1,,\n,4A,2,3,,7:8,40,0,1,,\n"), p, "cut.edl")
	want := []string{"4A 1 02:00-03:00 take 3 line 3 no [2]", "4A 2 05:00-06:00 take 3 line 4 yes []"}
	if got := told(r); !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	asks, u := p.Shots[0].Pulls[0].Asks, &r.Racks[0]
	if u.Error != 9 || float64(u.Beyond) != 9/asks.Hi || float64(u.Window[0]) != asks.Lo || u.Log != "ines.csv" {
		t.Errorf("%+v", u)
	}
	if !(u.Landed > u.Mark) || r.Racks[1].Landed < 1.599 || r.Racks[1].Landed > 1.601 {
		t.Errorf("landed at %v and %v", u.Landed, r.Racks[1].Landed)
	}
	if r.Unread != 1 || r.Gone != 0 {
		t.Errorf("%+v", r)
	}
}

// Rows that may be of the take in the cut or not are counted, and never taken for it.
func TestUndecided(t *testing.T) {
	p := cutPlan(t, whole)
	r := Of(logged(t, p, ",4A,1,1,,,40,0.1,1,,\n,4A,1,2,,,40,0.1,1,,\n,4A,1,3,,14:00:00:00,40,0.1,1,,\n"), p, "cut.edl")
	if u := &r.Racks[0]; u.Undecided != 2 || u.Logged || !slices.Equal(u.Others, []string{"3"}) || r.Unlogged != 2 {
		t.Errorf("%+v", r)
	}
}

// A piece that runs backwards or stands still has a source too.
func TestSourceOfAPiece(t *testing.T) {
	for speed, want := range map[plan.Number][2]int64{1: {1000, 1048}, 2: {1000, 1096}, -1: {953, 1001}, 0: {1000, 1001}} {
		s := shown{piece: &plan.Piece{In: 100, Out: 148, Source: 1000, Speed: speed}}
		if from, to := s.source(); from != want[0] || to != want[1] {
			t.Errorf("at %v: %d to %d", speed, from, to)
		}
	}
}

func TestNames(t *testing.T) {
	for name, want := range map[string]string{
		" 27a-3.mov ": "27A-3", "27A-3*": "27A-3", "27D/4.1": "27D/4.1", "A001C004": "A001C004", ".mov": ".MOV", "27C. *": "27C.", "": "",
	} {
		if got := clipName(name); got != want {
			t.Errorf("clip %q is %q", name, got)
		}
	}
	for name, want := range map[string]string{"03": "3", "pu": "PU", "0": "0", " 3a": "3A"} {
		if got := takeName(name); got != want {
			t.Errorf("take %q is %q", name, got)
		}
	}
}
