package lists

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/cmd/internal/console"
	"pullscore/interp"
	"pullscore/interp/plan"
)

// fits checks that no line of the list is wider than it may be.
func fits(t interface{ Errorf(string, ...any) }, name string, p *plan.Plan, width int) {
	var out bytes.Buffer
	if err := WriteText(console.Screen{W: &out, Width: width}, p); err != nil {
		t.Errorf("%s: %v", name, err)
	}
	for line := range strings.Lines(out.String()) {
		line = strings.TrimSuffix(line, "\n")
		if n := console.Columns(line); n > width {
			t.Errorf("%s: %d columns of %d: %s", name, n, width, line)
		}
	}
}

func TestExamplesFit(t *testing.T) {
	files, err := filepath.Glob("../../../examples/*.pull")
	if err != nil || len(files) == 0 {
		t.Fatal("no examples: ", err)
	}
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		fits(t, file, interp.Interpret(file, src, interp.Options{}).Plan, 80)
	}
}

// wide is a name of characters that take two columns each, and no blank.
var wide = strings.Repeat("無名燈籠", 15)

// hostilePlan has long names in wide characters, long reasons without a blank,
// great distances in feet and inches, and long times.
func hostilePlan(name string) string {
	return fmt.Sprintf(`plan %[1]q
rate 29.97df
units imperial
watched on 12 m screen from 18 m
%[2]s
subject %[1]q at 99 m
subject NEAR at 0.8 m
shot 3A %[1]q
  with stop f/4
  begins at 10:00:00:00
  start on NEAR
  rack to %[1]q, on 1001.25 s, over 101.25 s, because %[1]q
  rack to NEAR - 1.5 cm, on 1200 s, over 0.3 s
`, name, kit)
}

func TestHostileNamesFit(t *testing.T) {
	for _, name := range []string{wide, strings.Repeat("x", 300), "a " + wide + " b", strings.Repeat("שלום", 30), "e" + strings.Repeat("\u0301", 200)} {
		fits(t, fmt.Sprintf("%.20s", name), interpret(t, hostilePlan(name)).Plan, 80)
	}
}

func TestAnyNameFits(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		name := rapid.StringOfN(rapid.RuneFrom([]rune("aB é無ぁשก\u0301-=+@'\"")), 1, 120, -1).Draw(rt, "name")
		fits(rt, name, interpret(t, hostilePlan(name)).Plan, 80)
	})
}

// A spreadsheet takes a cell that begins with one of these signs for a formula
// (OWASP, CSV Injection, from memory); the guard is the apostrophe that
// spreadsheets take for "this is text".
func TestCSVHoldsNoFormulas(t *testing.T) {
	for _, name := range []string{"=1+1", "+1", "-1", "@SUM(A1)"} {
		var out bytes.Buffer
		if err := WriteCSV(&out, interpret(t, hostilePlan(name)).Plan); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(&out).ReadAll()
		if err != nil || len(rows) != 3 {
			t.Fatalf("%s: %d rows, %v", name, len(rows), err)
		}
		for _, row := range rows[1:] {
			for i, cell := range row {
				if cell == "" || !strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
					continue
				}
				if strings.Trim(cell, "-0123456789.") != "" {
					t.Errorf("%s: column %s holds %q", name, rows[0][i], cell)
				}
			}
		}
		if title := rows[1][0]; title != "'"+name {
			t.Errorf("the title is %q", title)
		}
	}
}

// RFC 4180, 2.1: every record ends in CRLF.
func TestCSVLineEnds(t *testing.T) {
	var out bytes.Buffer
	if err := WriteCSV(&out, interpret(t, ferry).Plan); err != nil {
		t.Fatal(err)
	}
	if text := out.String(); strings.Count(text, "\n") != 4 || strings.Count(text, "\r\n") != 4 {
		t.Errorf("%d line feeds, %d with a carriage return, want 4", strings.Count(text, "\n"), strings.Count(text, "\r\n"))
	}
}
