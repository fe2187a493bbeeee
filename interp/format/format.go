package format

import (
	"slices"
	"strings"
)

// A Format is a row of the table. Width and height are those of the used area, in
// millimetres.
type Format struct {
	Name     string // as a plan writes it, such as "super35 3-perf"
	WidthMM  float64
	HeightMM float64
	What     string
	Source   string
	Basis    string
}

// All returns every format, in the order of the table.
func All() []Format { return slices.Clone(table[:]) }

// Named returns the format with a name, in upper or lower case; ok is false if there is
// none.
func Named(name string) (f Format, ok bool) {
	for _, row := range table {
		if strings.EqualFold(row.Name, name) {
			return row, true
		}
	}
	return Format{}, false
}

// Names returns the name of every format.
func Names() []string {
	var list []string
	for _, row := range table {
		list = append(list, row.Name)
	}
	return list
}

// Ambiguous returns why a name stands for sensors of several sizes and what to write in
// its place. It returns "" for any other name.
func Ambiguous(name string) (message, detail string) {
	switch strings.ToLower(name) {
	case "super35":
		return "super35 is 4-perf, 3-perf or 2-perf film, and a digital sensor of that name has its own size",
			"As in: sensor super35 3-perf, or sensor 24.9 x 14 mm."
	case "aps-c":
		return "sensors called aps-c differ, from 22 to 24 mm",
			"Look it up in the camera's book, and write: sensor 23.5 x 15.6 mm."
	}
	return "", ""
}
