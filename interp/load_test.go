package interp_test

import (
	"os"
	"path/filepath"
	"testing"

	"pullscore/interp"
)

// The name of a file stands in a finding as it is written, whatever the reason
// why the file cannot be read.
func TestReasonsWhyAFileCannotBeRead(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.MkdirAll(filepath.Join("scenes", "kits"), 0o777); err != nil {
		t.Fatal(err)
	}
	big, err := os.Create(filepath.Join("scenes", "big.pull"))
	if err == nil {
		err = big.Truncate(interp.MaxFileSize + 1<<20) // it takes no room
	}
	if err == nil {
		err = big.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		"kits":     "It is no regular file.",
		"big.pull": "It has 9 MB; a plan has at most 8 MB.",
		"gone":     "There is no such file; the name is relative to this one.",
	} {
		for _, statement := range []string{"use", "edit", "script"} {
			path := filepath.Join("scenes", "plan.pull")
			res := interp.Interpret(path, []byte(statement+" \""+name+"\"\n"), interp.Options{})
			if len(res.Findings) != 1 || res.Findings[0].Message != `cannot read "`+name+`"` || res.Findings[0].Detail != want {
				t.Errorf("%s %s: %+v", statement, name, res.Findings)
			}
		}
	}
}
