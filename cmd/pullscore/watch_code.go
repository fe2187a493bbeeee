// The address of the live page as a code for the camera of a phone.

package main

import (
	"fmt"
	"strings"

	"rsc.io/qr"

	"pullscore/cmd/internal/console"
)

// quiet is the empty margin that a code needs, in modules (ISO/IEC 18004).
const quiet = 4

// printCode prints a QR code of a text, two rows of modules a line. Where the
// screen shows colours it is black on white; else it is made of full blocks for
// the light modules, for terminals that write bright on dark.
func printCode(screen console.Screen, text string) error {
	code, err := qr.Encode(text, qr.M)
	if err != nil {
		return fmt.Errorf("the address as a code: %w", err)
	}
	for _, line := range codeLines(code, screen.Colour) {
		if screen.Colour {
			line = "\x1b[30;107m" + line + "\x1b[0m"
		}
		if _, err := fmt.Fprintln(screen.W, line); err != nil {
			return err
		}
	}
	return nil
}

// codeLines returns a code with its margin as text: half blocks where a module is
// inked, dark ones or else light ones.
func codeLines(code *qr.Code, dark bool) []string {
	inked := func(x, y int) bool { return code.Black(x, y) == dark }
	var lines []string
	for y := -quiet; y < code.Size+quiet; y += 2 {
		var line strings.Builder
		for x := -quiet; x < code.Size+quiet; x++ {
			switch upper, lower := inked(x, y), inked(x, y+1); {
			case upper && lower:
				line.WriteString("█")
			case upper:
				line.WriteString("▀")
			case lower:
				line.WriteString("▄")
			default:
				line.WriteString(" ")
			}
		}
		lines = append(lines, line.String())
	}
	return lines
}
