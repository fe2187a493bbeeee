// Takes that several writers add to one log at the same time.

package takes

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
)

func TestAppendAtTheSameTime(t *testing.T) {
	const writers, each = 8, 25
	path := filepath.Join(t.TempDir(), "takes.csv")
	row := Take{Puller: "Nevo", Travel: 60, Error: -1.5, Time: 0.8}
	var all sync.WaitGroup
	for range writers {
		all.Go(func() {
			for range each {
				if err := AppendFile(path, row); err != nil {
					t.Error(err)
				}
			}
		})
	}
	all.Wait()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	want := string(appendRow(nil, Columns, row))
	if rows, ok := strings.CutPrefix(string(data), Header); !ok || rows != strings.Repeat(want, writers*each) {
		t.Errorf("rows are lost, torn or under a second header: %d of %d", strings.Count(rows, want), writers*each)
	}
}

// A log that begins with takes of known clips has columns for them, and reads them again.
func TestAppendClips(t *testing.T) {
	path := filepath.Join(t.TempDir(), "takes.csv")
	list := []Take{
		{Shot: "4A", Pull: 1, Travel: 60, Error: -1.5, Time: 0.8, OnSet: "3", Clip: "4A-3", Timecode: "14:20:10:00"},
		{Shot: "4A", Pull: 2, Travel: 60, Error: 2, Time: 0.9},
	}
	if err := AppendFile(path, list...); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if head, _, _ := strings.Cut(string(data), "\n"); head != "date,plan,shot,pull,puller,travel_deg,error_deg,time_s,hit,take,clip,timecode,note" {
		t.Error(head)
	}
	got, faults := read(t, string(data))
	for i := range got {
		got[i].Line = 0
	}
	if len(faults) > 0 || !slices.Equal(got, list) {
		t.Errorf("%+v, faults %q", got, faults)
	}
}
