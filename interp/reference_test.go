package interp_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// Every code that this package writes stands in the reference, and no other
// stands in its tables of them. The same goes for what is read for a plan.
func TestReferenceHasEveryCode(t *testing.T) {
	reference, err := os.ReadFile("../lang/REFERENCE.md")
	if err != nil {
		t.Fatal(err)
	}
	var files []string
	for _, room := range []string{".", "change", "checks", "clock", "cut", "film", "kit", "load", "names", "shot", "stage", "edit", "../lang/lines", "../lang/captions", "../lang/edl", "../lang/otio", "../lang/fountain"} {
		list, _ := filepath.Glob(filepath.Join(room, "*.go"))
		files = append(files, list...)
	}
	code := regexp.MustCompile(`(?:Code: +|Code, d\.Severity = |Code, d\.[A-Za-z., ]+ = |fail\((?:[^"]*, )?|tell\((?:lang\.[A-Za-z]+, )?|code: +|landing\(p, )"([a-z]+(?:-[a-z]+)*)"`)
	codes, all := 0, ""
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		all += string(src)
		for _, m := range code.FindAllStringSubmatch(string(src), -1) {
			codes++
			if !strings.Contains(string(reference), "`"+m[1]+"`") {
				t.Errorf("%s: the reference has no %q", name, m[1])
			}
		}
	}
	_, tables, _ := strings.Cut(string(reference), "## What does not make sense")
	for _, row := range regexp.MustCompile("(?m)^\\| (`[^|]*) \\|").FindAllStringSubmatch(tables, -1) {
		for _, m := range regexp.MustCompile("`([a-z-]+)`").FindAllStringSubmatch(row[1], -1) {
			if !strings.Contains(all, `"`+m[1]+`"`) && !strings.HasPrefix(m[1], "no-camera") && !strings.HasPrefix(m[1], "no-lens") {
				t.Errorf("the reference has %q, and nothing writes it", m[1])
			}
		}
	}
	if codes < 80 {
		t.Errorf("only %d codes were found", codes)
	}
}
