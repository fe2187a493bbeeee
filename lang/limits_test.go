// Tests of the limits, and of sources that mean no good.

package lang

import (
	"bytes"
	"slices"
	"strings"
	"testing"
	"time"

	"pullscore/lang/testing/cputime"
)

func TestLimits(t *testing.T) {
	repeat := strings.Repeat
	// Where no limit is meant, the sources are as long as it takes to show that
	// the time does not grow with their square.
	tests := []struct {
		name, src string
		code      string // of one diagnostic; none where it is empty
	}{
		{"just over 8 MB", repeat("#", maxBytes+1), "too-large"},
		{"256 kB of brackets", "let a = " + repeat("(", 1<<18), "too-large"},
		{"too many words", repeat("shot 1\n"+repeat("a ", 10_000)+"\n", maxTokens/10_000), "too-large"},
		{"8 MB of one name", repeat("a", maxBytes), "unknown-word"},
		{"256 kB of quotes", repeat(`"`, 1<<18), "unknown-word"},
		{"8 MB of NUL", repeat("\x00", maxBytes), "bad-character"},
		{"2 MB of broken UTF-8", repeat("\xff", 2<<20), "bad-character"},
		{"256 kB of two bad characters", repeat("@$", 1<<17), "bad-character"},
		{"too many lines", repeat("\n", maxLines+1), "too-large"},
		{"10 000 brackets", "let a = " + repeat("(", 10_000) + "1 m" + repeat(")", 10_000), "too-large"},
		{"10 000 signs", "let a = " + repeat("- ", 10_000) + "1 m", "too-large"},
		{"100 000 terms", "let a = 1 m" + repeat(" + 1 m", 100_000), "too-large"},
		{"50 000 joined lines", "shot 1\n" + repeat("pause 1 s,\n", 50_000), "stray-comma"},
		{"50 000 clauses", "shot 1\nrack to A" + repeat(" over 1 s", 50_000), "duplicate-clause"},
		{"60 000 parameters", "move glance(a" + repeat(",a", 60_000) + ")", ""},
		{"60 000 arguments", "shot 1\nglance(a" + repeat(",a", 60_000) + ")", ""},
		{"digits", "let a = " + repeat("9", 100_000) + " m", "bad-number"},
		{"a number too large for a float", "let a = 1" + repeat("0", 400) + " m", "bad-number"},
		{"digits and points", "let a = " + repeat("9.", 100_000) + " m", "bad-number"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			var diags []Diagnostic
			took := cputime.Of(func() {
				_, diags = Parse("plan.pull", []byte(test.src))
				Format([]byte(test.src))
			})
			isWanted := func(d Diagnostic) bool { return d.Code == test.code }
			if test.code == "" && len(diags) > 0 || test.code != "" && !slices.ContainsFunc(diags, isWanted) {
				t.Errorf("%d diagnostics, and none of them is %q", len(diags), test.code)
			}
			if took > 4*time.Second { // far more than any of them needs, far less than with its square
				t.Errorf("took %v", took)
			}
			for _, d := range diags {
				if len(d.Message)+len(d.Detail)+len(Quote(d, []byte(test.src))) > 2000 {
					t.Fatalf("a diagnostic of %d bytes", len(d.Message))
				}
			}
		})
	}
}

// TestRefusesQuickly checks that a file far over the limit costs no work.
func TestRefusesQuickly(t *testing.T) {
	src := bytes.Repeat([]byte("hold 1 s\n"), 64<<20/9)
	var diags []Diagnostic
	took := cputime.Of(func() { _, diags = Parse("plan.pull", src) })
	if took > 100*time.Millisecond || len(diags) != 1 {
		t.Errorf("%d diagnostics after %v", len(diags), took)
	}
}

func TestManyMistakes(t *testing.T) {
	_, diags := Parse("plan.pull", []byte(strings.Repeat("wombat\n", 5000)))
	if len(diags) != maxDiagnostics+1 {
		t.Fatalf("%d diagnostics", len(diags))
	}
	if last := diags[maxDiagnostics]; last.Code != "too-many-mistakes" || last.Range.Start.Line != maxDiagnostics+1 {
		t.Errorf("the last is %q in line %d", last.Code, last.Range.Start.Line)
	}
}

// TestUnruly checks odd bytes one by one: the line is told of, and the next is
// read.
func TestUnruly(t *testing.T) {
	for _, odd := range []string{"\x00", "\x1b[31m", "\xff\xfe", "\xed\xa0\x80", "\u202E", "\u200B", "🎬", "\\", "{", "\u0301"} {
		src := "shot 1\n  hold " + odd + " 1 s\n  pause 1 s\n"
		f, diags := Parse("plan.pull", []byte(src))
		if len(diags) == 0 || diags[0].Code != "bad-character" || diags[0].Range.Start.Line != 2 {
			t.Errorf("%q: %+v", odd, diags)
		}
		if body := f.Sections[0].Body; len(body) != 2 {
			t.Errorf("%q: %d statements", odd, len(body))
		} else if _, ok := body[1].(*Pause); !ok {
			t.Errorf("%q: the next line is %T", odd, body[1])
		}
		if q := Quote(diags[0], []byte(src)); strings.ContainsAny(q, "\x00\x1b") {
			t.Errorf("%q is quoted as it is", odd)
		}
	}
}
