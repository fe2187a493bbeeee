package format_test

import (
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"pullscore/interp/format"
)

// TestTable compares the table with testdata/lens-formats.tsv, which names the source of
// every size.
func TestTable(t *testing.T) {
	text, err := os.ReadFile("../../testdata/lens-formats.tsv")
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for line := range strings.Lines(string(text)) {
		cells := strings.Split(strings.TrimRight(line, "\n"), "\t")
		if cells[0] == "name" {
			continue
		}
		rows++
		f, ok := format.Named(strings.ToUpper(cells[0]))
		if !ok {
			t.Errorf("there is no %s", cells[0])
			continue
		}
		width, _ := strconv.ParseFloat(cells[1], 64)
		height, _ := strconv.ParseFloat(cells[2], 64)
		want := format.Format{Name: cells[0], WidthMM: width, HeightMM: height, What: cells[3], Source: cells[4], Basis: cells[5]}
		if f != want {
			t.Errorf("%+v\nwant\n%+v", f, want)
		}
	}
	if rows != 24 || len(format.All()) != rows || len(format.Names()) != rows {
		t.Errorf("the table has %d rows and the file %d", len(format.All()), rows)
	}
}

func TestNamesThatAreNone(t *testing.T) {
	for _, name := range []string{"", "super35", "aps-c", "super35 5-perf", "2/3"} {
		if f, ok := format.Named(name); ok {
			t.Errorf("%s is %+v", name, f)
		}
	}
	for _, name := range []string{"super35", "Super35", "aps-c", "APS-C"} {
		if message, detail := format.Ambiguous(name); message == "" || detail == "" {
			t.Errorf("%s is not told to be ambiguous", name)
		}
	}
	if message, _ := format.Ambiguous("super16"); message != "" {
		t.Errorf("super16: %s", message)
	}
}

// The topic that help prints has every row of the table, in its order, and no other.
func TestTopic(t *testing.T) {
	text, err := os.ReadFile("../../examples/topics/formats.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rows, _ := strings.Cut(string(text), "| --- | --- | --- | --- | --- |\n")
	var want strings.Builder
	for _, f := range format.All() {
		fmt.Fprintf(&want, "| %s | %.2f x %.2f mm | %s | %s | %s |\n", f.Name, f.WidthMM, f.HeightMM, f.What, f.Source, f.Basis)
	}
	if rows != want.String() {
		t.Errorf("the topic has\n%s\nwant\n%s", rows, want.String())
	}
}
