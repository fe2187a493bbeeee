// Takes that several writers add to one log at the same time.

package takes

import (
	"os"
	"path/filepath"
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
