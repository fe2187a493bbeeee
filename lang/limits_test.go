// Tests of the limits, and of sources that mean no good.

package lang

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

func TestLimits(t *testing.T) {
	repeat := strings.Repeat
	tests := []struct {
		name, src string
		code      string // of the first diagnostic
	}{
		{"64 MB", repeat("hold 1 s\n", 64<<20/9), "too-large"},
		{"just over 8 MB", repeat("#", maxBytes+1), "too-large"},
		{"8 MB of brackets", "let a = " + repeat("(", maxBytes-8), "too-large"},
		{"8 MB of words", repeat("a ", maxBytes/2), "too-large"},
		{"8 MB of one name", repeat("a", maxBytes), "unknown-word"},
		{"8 MB of quotes", repeat(`"`, maxBytes), "too-large"},
		{"8 MB of NUL", repeat("\x00", maxBytes), "bad-character"},
		{"8 MB of broken UTF-8", repeat("\xff", maxBytes), "bad-character"},
		{"8 MB of two bad characters", repeat("@$", maxBytes/2), "bad-character"},
		{"too many lines", repeat("\n", maxLines+1), "too-large"},
		{"10 000 brackets", "let a = " + repeat("(", 10_000) + "1 m" + repeat(")", 10_000), "too-large"},
		{"10 000 signs", "let a = " + repeat("- ", 10_000) + "1 m", "too-large"},
		{"100 000 terms", "let a = 1 m" + repeat(" + 1 m", 100_000), "too-large"},
		{"200 000 joined lines", "shot 1\n" + repeat("pause 1 s,\n", 200_000), "stray-comma"},
		{"200 000 clauses", "shot 1\nrack to A" + repeat(" over 1 s", 200_000), "duplicate-clause"},
		{"300 000 parameters", "move glance(a" + repeat(",a", 300_000) + ")", ""},
		{"300 000 arguments", "shot 1\nglance(a" + repeat(",a", 300_000) + ")", ""},
		{"digits", "let a = " + repeat("9", 100_000) + " m", "bad-number"},
		{"a number too large for a float", "let a = 1" + repeat("0", 400) + " m", "bad-number"},
		{"digits and points", "let a = " + repeat("9.", 100_000) + " m", "bad-number"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			start := time.Now()
			_, diags := Parse("plan.pull", []byte(test.src))
			Format([]byte(test.src))
			took := time.Since(start)
			code := ""
			if len(diags) > 0 {
				code = diags[0].Code
			}
			if code != test.code {
				t.Errorf("the first diagnostic is %q, not %q", code, test.code)
			}
			if took > 10*time.Second { // far more than any of them needs
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
	start := time.Now()
	_, diags := Parse("plan.pull", src)
	if took := time.Since(start); took > 100*time.Millisecond || len(diags) != 1 {
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
