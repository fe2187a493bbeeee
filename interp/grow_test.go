// How the work on one shot grows with what stands in it: at most n log n in its
// lines, racks, cues, holds, movements and mistakes.

package interp_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"pullscore/interp"
	"pullscore/lang/testing/cputime"
)

// growing are shots that can be made of any size: the i-th part of each.
var growing = []struct {
	name string
	part func(i int) string
}{
	{"lines", func(i int) string { return line(i) }},
	{"speakers change", func(i int) string { return fmt.Sprintf("%s: \"so then we go on\"\npause 0.4 s\n", turn(i)) }},
	{"racks on words", func(i int) string {
		return fmt.Sprintf("%s: \"so then word%d we go on and on\"\nrack to %s, landing on \"word%d\", over 1.2 s\n", turn(i), i, turn(i+1), i)
	}},
	{"racks with lines", func(i int) string { return line(i) + fmt.Sprintf("rack to %s, over 1.2 s\n", turn(i+1)) }},
	{"racks without a length", func(i int) string { return line(i) + fmt.Sprintf("rack to %s\n", turn(i+1)) }},
	{"racks on words that are not there", func(i int) string { return line(0) + "rack to BOB, landing on \"nothing\"\n" }},
	{"racks on words without a line", func(i int) string { return "rack to BOB, on \"nothing\", over 1 s\n" }},
	{"racks to nobody", func(i int) string { return "rack to NOBODY, over 1 s\n" }},
	{"racks that overlap", func(i int) string { return fmt.Sprintf("rack to %s, on %d s, over 3 s\n", turn(i), i) }},
	{"racks on one line", func(i int) string {
		if i == 0 {
			return "ANN: \"so then\"\n"
		}
		return fmt.Sprintf("rack to %s, on ANN + %d s, over 1 s\n", turn(i), 2*i)
	}},
	{"racks with holds", func(i int) string { return fmt.Sprintf("rack to %s, over 1.2 s\nhold 1 s\n", turn(i+1)) }},
	{"holds", func(i int) string { return "hold 1 s\n" }},
	{"follows", func(i int) string {
		return "rack to ANN, over 1 s\nhold 0.2 s\n" + walk(i) + "follow ANN\npause 2 s\n"
	}},
	{"cues", func(i int) string {
		return fmt.Sprintf("%s: \"so then word%d on and on\"\ncue c%d on %s \"word%d\"\n", turn(i), i, i, turn(i), i)
	}},
	{"cues at the end of lines", func(i int) string {
		return fmt.Sprintf("%s: \"so then on\"\ncue c%d on end of %s\n", turn(i), i, turn(i))
	}},
	{"cues on the cue above", func(i int) string { return fmt.Sprintf("cue c%d on c%d + 1 s\n", i+1, i) }},
	{"cues on the cue below", func(i int) string { return fmt.Sprintf("cue c%d on c%d + 1 s\n", i, i+1) }},
	{"cues on words that are not there", func(i int) string { return line(i) + fmt.Sprintf("cue c%d on \"nothing\"\n", i) }},
	{"cues on words that stand elsewhere", func(i int) string {
		return fmt.Sprintf("%s: \"so then word%d on\"\ncue c%d on \"word%d\"\n", turn(i), i, i, i/2)
	}},
	{"cues on words of many lines", func(i int) string { return line(0) + fmt.Sprintf("cue c%d on ANN \"go\"\n", i) }},
	{"cues on one of many lines", func(i int) string { return line(0) + fmt.Sprintf("cue c%d on ANN\n", i) }},
	{"cues without a line", func(i int) string { return fmt.Sprintf("cue c%d on \"nothing\"\n", i) }},
	{"cues on unknown names", func(i int) string { return fmt.Sprintf("cue c%d on d%dx\n", i, i) }},
	{"moves used", func(i int) string { return fmt.Sprintf("over_to(%s, \"go\")\n%s", turn(i), line(i)) }},
	{"moves that nobody uses", func(i int) string {
		return fmt.Sprintf("move m%d(who)\n  rack to who, over 1 s, because \"so\"\n  hold 1 s\n", i)
	}},
	{"movements", func(i int) string { return line(i) + walk(i) }},
	{"movements with racks", func(i int) string { return line(0) + walk(i) + fmt.Sprintf("rack to %s\n", turn(i+1)) }},
	{"movements, racks and holds", func(i int) string {
		return walk(i) + fmt.Sprintf("rack to %s\nhold 1 s\n", turn(i+1))
	}},
	{"movements against time", func(i int) string {
		return fmt.Sprintf("ANN moves to %d m on %d s over 1 s\n", 2+i%2, 40000-2*i)
	}},
	{"movements beside somebody", func(i int) string {
		if i%2 == 0 {
			return "pause 1 s\nANN moves to BOB + 20 cm over 1 s\n"
		}
		return "pause 1 s\nANN moves to 2 m over 1 s\n"
	}},
	{"dollies", func(i int) string {
		return fmt.Sprintf("pause 1 s\ndolly %s 10 cm over 1 s\n", []string{"in", "out"}[i%2]) + walk(i) + "rack to ANN\n"
	}},
	{"pans", func(i int) string {
		return fmt.Sprintf("pause 1 s\npan %s 10 deg over 1 s\n", []string{"left", "right"}[i%2])
	}},
	{"pans with racks", func(i int) string {
		return fmt.Sprintf("pause 2 s\npan to %s over 1 s\nrack to %s, with pan\n", turn(i), turn(i))
	}},
	{"tracks while the camera pans", func(i int) string {
		way := []string{"left", "right"}[i%2]
		return fmt.Sprintf("pause 1 s\npan to BOB over 1 s\ntrack %s 10 cm, with pan\n", way)
	}},
	{"actions", func(i int) string {
		return fmt.Sprintf("action \"a door\" lasting 1 s\nrack to %s, over 1 s\n", turn(i))
	}},
}

func turn(i int) string { return []string{"ANN", "BOB"}[i%2] }

func line(i int) string { return turn(i) + ": \"so then we go on and on\"\n" }

func walk(i int) string { return fmt.Sprintf("ANN moves to %d m over 1 s\n", 2+i%2) }

// grown returns a plan with n parts in its one shot.
func grown(part func(int) string, n int) []byte {
	var b strings.Builder
	b.WriteString("plan \"Growth\"\nrate 24\nuse \"kit.pull\"\nsubject ANN at 2 m\nsubject BOB at 3 m\n")
	b.WriteString("move over_to(WHO, WORD)\nrack to WHO, on WORD, over 1 s\n")
	b.WriteString("shot 1 \"x\"\nwith camera A, lens \"75\", stop f/4\nstart on ANN\n")
	for i := range n {
		b.WriteString(part(i))
	}
	return []byte(b.String())
}

func interpretGrown(src []byte) *interp.Result {
	return interp.Interpret("growth.pull", src, interp.Options{ReadFile: func(string) ([]byte, error) { return []byte(kitText), nil }})
}

// mostGrowth is how often the work on four times as much may be that on once as
// much: n log n makes it less than 5, what is quadratic 16.
const mostGrowth = 6

// TestWorkGrowsStraight measures what the processor does, whatever else the
// machine does. What other programs leave of its caches still differs: one try
// of several has to stay within the limit, which nothing quadratic ever does.
func TestWorkGrowsStraight(t *testing.T) {
	if testing.Short() {
		t.Skip("takes ten seconds")
	}
	const n, tries = 400, 5
	for _, k := range growing {
		t.Run(k.name, func(t *testing.T) {
			small, large := grown(k.part, n), grown(k.part, 4*n)
			least := math.Inf(1)
			for try := 0; try < tries && least >= mostGrowth; try++ {
				one := cputime.Of(func() { interpretGrown(small) })
				four := cputime.Of(func() { interpretGrown(large) })
				least = min(least, float64(four)/float64(max(one, time.Millisecond)))
			}
			if least >= mostGrowth {
				t.Errorf("four times as much takes %.1f times the work", least)
			}
		})
	}
}

// BenchmarkGrow prints what 4000 parts take, and how often the time of 1000 that
// is.
func BenchmarkGrow(b *testing.B) {
	for _, k := range growing {
		b.Run(strings.ReplaceAll(k.name, " ", "_"), func(b *testing.B) {
			small, large := grown(k.part, 1000), grown(k.part, 4000)
			var one, four time.Duration
			for b.Loop() {
				one += cputime.Of(func() { interpretGrown(small) })
				four += cputime.Of(func() { interpretGrown(large) })
			}
			b.ReportMetric(float64(four)/float64(one), "ratio")
			b.ReportMetric(float64(four.Microseconds())/float64(b.N)/1000, "ms/4000")
		})
	}
}
