package editors

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// TestEmacs checks the colours of Emacs, and that it finds what check prints.
func TestEmacs(t *testing.T) {
	editor, err := exec.LookPath("emacs")
	if err != nil {
		t.Skip("skipped: emacs is not installed")
	}
	plan, out := faultyPlan(t), filepath.Join(t.TempDir(), "seen")
	text := append(read(t, plan), "  pan to KETTLE over 1 s, on 9 s\n  mark moves to 2 m over 1 s # away\n"...)
	if err := os.WriteFile(plan, text, 0o644); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(editor, "-Q", "--batch", "-L", "emacs", "-l", "testdata/session.el")
	cmd.Env = append(os.Environ(), "HOME="+t.TempDir(), "PLAN="+plan, "SEEN="+out, "PROGRAM="+pullscore(t))
	if text, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	const want = `mode pull-mode
rate: font-lock-keyword-face
subject: font-lock-keyword-face
HALDIS: nil
1.1 m: font-lock-constant-face
"The kettle: font-lock-string-face
rack: font-lock-keyword-face
mark moves: default
pan to: font-lock-keyword-face
finding 14:43
finding 16:3
finding 13:3
`
	if got := string(read(t, out)); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}
