package main

import (
	"testing"

	"rsc.io/qr"
)

// The printed code is the code, module by module, with its margin: in both ways
// of printing it.
func TestThePrintedCodeIsTheCode(t *testing.T) {
	code, err := qr.Encode("http://192.168.0.7:8080/?token=ABCDEFGHIJKLMNOPQRSTUVWXYZ", qr.M)
	if err != nil {
		t.Fatal(err)
	}
	for _, dark := range []bool{true, false} {
		lines := codeLines(code, dark)
		if want := (code.Size + 2*quiet + 1) / 2; len(lines) != want {
			t.Fatalf("%d lines, want %d", len(lines), want)
		}
		for i, line := range lines {
			row := []rune(line)
			if len(row) != code.Size+2*quiet {
				t.Fatalf("line %d has %d modules, want %d", i, len(row), code.Size+2*quiet)
			}
			for j, r := range row {
				x, y := j-quiet, 2*i-quiet
				upper, lower := r == '█' || r == '▀', r == '█' || r == '▄'
				if upper != (code.Black(x, y) == dark) || lower != (code.Black(x, y+1) == dark) {
					t.Fatalf("the modules at %d, %d are printed as %q", x, y, r)
				}
			}
		}
	}
}
