// Tests of the findings: the files under testdata/findings hold plans with what
// is to be told of each line.

package interp_test

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/lang"
	"pullscore/lang/testing/chunk"
)

func TestFindings(t *testing.T) {
	files, err := filepath.Glob("testdata/findings/*.pull")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		chunks, err := chunk.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range chunks {
			t.Run(c.Name, func(t *testing.T) { checkChunk(t, c) })
		}
	}
}

func checkChunk(t *testing.T, c *chunk.Chunk) {
	res := interpret("plan.pull", string(c.Source), others...)
	for _, d := range res.Findings {
		text := told(d)
		if !c.Take(d.Range.Start.Line, text) {
			t.Errorf("%s, line %d: unexpected %s", c.Name, d.Range.Start.Line, text)
		}
		checkStyle(t, d)
	}
	for _, left := range c.Left() {
		t.Errorf("%s, %s: nothing like it was told", c.Name, left)
	}
}

// others are the logs of takes, the cuts and the page that the plans under
// testdata/findings name.
var others = []string{
	"nocolumn.csv", "travel_deg\n60\n",
	"slip.csv", "travel_deg,error_deg,time_s\n60,1,0.8\n60,far,0.8\n60,2,0.8\n",
	"wrong.csv", "date,plan,shot,pull,travel_deg,error_deg,time_s\n,,,,60,0.5,1\n,,,,60,-0.5,1\n2026-03-02,Another,4A,2,60,-20,1\n" + strings.Repeat(",,,,60,0.4,1\n,,,,60,-0.8,1\n,,,,60,1,1\n", 3),
	"page.csv", "travel_deg,error_deg,time_s,hit,note\n60,1,0.8,yes,\"page, mouse wheel\"\n60,,0.8,no,windy\n",
	"others.csv", "puller,travel_deg,error_deg,time_s\nMIRA,60,1,0.8\n",
	"landings.csv", "plan,shot,pull,landed,time_s\n,1,1,96 cm,1.2\n,1,7,96 cm,1.2\nAnother,1,1,96 cm,1.2\n",
	"words.srt", "1\n00:00:10,000 --> 00:00:11,000\nWhere is the rope?\n\n2\n00:00:12,000 --> 00:00:13,500\nOn the quay, by the lamp.\n",
	"named.srt", "1\n00:00:10,000 --> 00:00:11,000\nOTTO: Where is the rope?\n\n2\n00:00:12,000 --> 00:00:13,500\nHARBOUR MASTER: On the quay, by the lamp.\n\n" +
		"3\n00:00:14,000 --> 00:00:15,000\nNORA: Then fetch it.\n",
	"talk.srt", "1\n00:00:01,000 --> 00:00:04,000\nNORA: When did you first see the light?\n\n2\n00:00:05,000 --> 00:00:11,000\n" +
		"OTTO: I was nine. My father had the boat out past the second buoy, Mr. Bell.\n\n3\n00:00:11,100 --> 00:00:13,000\nNORA: And he came back to you?\n\n" +
		"4\n00:00:15,000 --> 00:00:17,000\nOTTO: By morning.\n",
	"list.edl", "TITLE: T\n001  A1  V  C  10:00:00:00 10:00:05:00 01:00:10:00 01:00:15:00\n* FROM CLIP NAME: 1\n* LOC: 01:00:11:00 RED Knock\n",
	"away.edl", "001  A1  V  C  10:00:00:00 10:00:02:00 01:00:00:00 01:00:02:00\n* FROM CLIP NAME: 1\n" +
		"002  B1  V  C  11:00:00:00 11:00:02:00 01:00:02:00 01:00:04:00\n* FROM CLIP NAME: 2\n" +
		"003  A1  V  C  10:00:04:00 10:00:06:00 01:00:04:00 01:00:06:00\n* FROM CLIP NAME: 1\n",
	"lift.edl", "001  A1  V  C  10:00:00:00 10:00:03:00 01:00:00:00 01:00:03:00\n* FROM CLIP NAME: 1\n" +
		"002  A1  V  C  10:00:06:00 10:00:10:00 01:00:03:00 01:00:07:00\n* FROM CLIP NAME: 1\n",
	"takes.edl", "001  A1  V  C  10:00:00:00 10:00:02:00 01:00:00:00 01:00:02:00\n* FROM CLIP NAME: 1-3\n" +
		"002  A1  V  C  10:10:00:00 10:10:03:00 01:00:02:00 01:00:05:00\n* FROM CLIP NAME: 1 TK 4\n" +
		"003  B1  V  C  10:00:00:00 10:00:02:00 01:00:05:00 01:00:07:00\n* FROM CLIP NAME: 2\n" +
		"004  B1  V  C  11:00:00:00 11:00:02:00 01:00:07:00 01:00:09:00\n* FROM CLIP NAME: 2\n",
	"page.fountain", "INT. SHED - DAY #4#\n\nNORA\nThen fetch it before the tide turns.\n\nNORA\nWhere's the rope, the long one?\n\n" +
		"OTTO\nOn the quay, by the lamp.\n\nOTTO\nHe said that he would keep it dry.\n\nOTTO\nIt went with the tide.\n\nINT. QUAY - DAY #5#\n\nNORA\nNothing here.\n",
}

// told is a diagnostic on one line, cures included.
func told(d lang.Diagnostic) string {
	s := fmt.Sprintf("%s %s: %s. %s", d.Severity, d.Code, d.Message, d.Detail)
	for _, c := range d.Cures {
		s += " [" + c.Text + "]"
	}
	return s
}

// checkStyle keeps messages in one manner: a summary without a full stop, a
// detail of whole sentences.
func checkStyle(t *testing.T, d lang.Diagnostic) {
	t.Helper()
	if d.Message == "" || strings.HasSuffix(d.Message, ".") || strings.Contains(d.Message, "%!") {
		t.Errorf("summary %q", d.Message)
	}
	usage := strings.Contains(d.Detail, "Write: ") // how a statement is written ends as it does
	if d.Detail != "" && !usage && !strings.HasSuffix(d.Detail, ".") && !strings.HasSuffix(d.Detail, "?") || strings.Contains(d.Detail, "%!") {
		t.Errorf("detail %q is no sentence", d.Detail)
	}
	if d.Range.Start.Line < 1 || d.Range.End.Offset < d.Range.Start.Offset {
		t.Errorf("%q has no place: %+v", d.Message, d.Range)
	}
}

// kitText is a kit of cameras and lenses for the tests, invented.
const kitText = `
camera A
  sensor 24.89 x 18.66 mm
  records 3840 px
  iso 800
  shutter 180 deg
  on tripod

lens "75"
  focal 75 mm
  stops T1.9 to T22
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
  breathing 2 %
  mark 75 cm at 0 deg
  mark 1 m at 118 deg
  mark 2 m at 240 deg
  mark 5 m at 290 deg
  mark inf at 310 deg
`

// interpret interprets a text that may use "kit.pull" and the named files.
func interpret(path, text string, others ...string) *interp.Result {
	files := map[string]string{"kit.pull": kitText}
	for i := 0; i+1 < len(others); i += 2 {
		files[others[i]] = others[i+1]
	}
	read := func(path string) ([]byte, error) {
		if s, ok := files[filepath.ToSlash(path)]; ok {
			return []byte(s), nil
		}
		return nil, &fs.PathError{Op: "open", Path: path, Err: os.ErrNotExist}
	}
	return interp.Interpret(path, []byte(text), interp.Options{ReadFile: read})
}

// scene is a plan around the body of one shot.
func scene(body string) string {
	return `plan "Test"
rate 24
watched on 12 m screen from 18 m
use "kit.pull"
subject NORA at 1.7 m
subject LAMP at 95 cm, 10 cm left
subject GATE at 5.2 m, 80 cm right
voice OTTO
shot 1
  with stop f/2.8
  start on NORA
` + body + "\n"
}
