// Benchmarks: the parser beside hashicorp's HCL on as much text of the same
// kind, and the formatter. Run them together:
//
//	go test -run '^$' -bench . ./lang
//
// HCL is a general configuration language whose hand-written scanner and
// parser are known to be good; it is here as a yardstick only.

package lang

import (
	"fmt"
	"runtime"
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// scene is what happens again and again in a film's plan: five spoken lines, a
// rack, a hold and a pause.
const scene = `  NADIA: "You kept the second ledger, number %d, in the drawer."
  OTTO: "I kept every ledger that they let me keep.", lasting 2.1 s
  NADIA: "And the door was open all that time?"
  OTTO: "Nobody ever closes doors in this harbour."
  NADIA: "Then somebody heard us.", on end of OTTO + 0.4 s
  rack to LEDGER - 5 cm, landing on "heard", over 1.4 s, because "she knows now"
  hold 1 s
  pause 0.5 s
`

// film writes a plan of the given number of shots and of scenes in each.
func film(shots, scenes int) []byte {
	var b strings.Builder
	b.WriteString("plan \"Harbour office\"\nrate 24\nsubject NADIA at 1.70 m, deep 4 cm\nvoice OTTO\n")
	for shot := range shots {
		fmt.Fprintf(&b, "\nshot %d \"Nadia hears the door\"\n  with camera A, lens \"75\", stop f/2.8\n  start on NADIA\n", shot+1)
		for n := range scenes {
			fmt.Fprintf(&b, scene, n)
		}
	}
	return []byte(b.String())
}

const hclScene = `  line {
    who = "NADIA"
    words = "You kept the second ledger, number %d, in the drawer."
  }
  line {
    who = "OTTO"
    words = "I kept every ledger that they let me keep."
    lasting = 2.1
  }
  line {
    who = "NADIA"
    words = "And the door was open all that time?"
  }
  line {
    who = "OTTO"
    words = "Nobody ever closes doors in this harbour."
  }
  line {
    who = "NADIA"
    words = "Then somebody heard us."
    on = end(OTTO) + 0.4
  }
  rack {
    to = LEDGER - 0.05
    landing_on = "heard"
    over = 1.4
    because = "she knows now"
  }
  hold = 1
  pause = 0.5
`

// hclFilm writes the same film in HCL, as far as it takes to fill size bytes.
func hclFilm(size int) []byte {
	var b strings.Builder
	for n := 0; b.Len() < size; n++ {
		fmt.Fprintf(&b, "shot \"%d\" {\n  stop = 2.8\n", n)
		fmt.Fprintf(&b, hclScene, n)
		b.WriteString("}\n")
	}
	return []byte(b.String())
}

func BenchmarkParse(b *testing.B) {
	src := film(60, 40)
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		if _, diags := Parse("film.pull", src); len(diags) > 0 {
			b.Fatal(diags[0].Message)
		}
	}
}

func BenchmarkHCL(b *testing.B) {
	src := hclFilm(len(film(60, 40)))
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		if _, diags := hclsyntax.ParseConfig(src, "film.hcl", hcl.InitialPos); diags.HasErrors() {
			b.Fatal(diags)
		}
	}
}

func BenchmarkFormat(b *testing.B) {
	src := film(60, 40)
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		Format(src)
	}
}

func BenchmarkScan(b *testing.B) {
	src := string(film(60, 40))
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		s := newScanner("film.pull", src)
		for !s.scan().EOF() {
		}
	}
}

// TestFeatureFilm checks that a whole film's plan is read, and that a token of
// it costs a few hundred bytes at most.
func TestFeatureFilm(t *testing.T) {
	src := film(120, 50) // 30 000 spoken lines, 6 000 racks
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	f, diags := Parse("film.pull", src)
	runtime.GC()
	runtime.ReadMemStats(&after)
	if len(diags) > 0 || len(f.Sections) != 120 || len(f.Sections[119].Body) != 2+50*8 {
		t.Fatalf("%d diagnostics, %d shots", len(diags), len(f.Sections))
	}
	tokens := len(tokensOf(src))
	held := int(after.HeapAlloc) - int(before.HeapAlloc)
	t.Logf("%d bytes, %d tokens, %d bytes of tree a token", len(src), tokens, held/tokens)
	if held > 300*tokens {
		t.Errorf("the tree takes %d bytes a token", held/tokens)
	}
	runtime.KeepAlive(f)
}

// BenchmarkBuild builds the parsers that a plan with its kit needs, as each start
// of the program does.
func BenchmarkBuild(b *testing.B) {
	words := strings.Fields("plan rate use subject voice with camera lens shot sensor on focal stops closest ring start rack hold pause cue " + movesWord + " " + speechWord)
	for _, word := range words {
		b.Run(word, func(b *testing.B) {
			for b.Loop() {
				(&spec{of: specOf[word].of}).parser()
			}
		})
	}
}
