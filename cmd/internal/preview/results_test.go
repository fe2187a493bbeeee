package preview

import (
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"pullscore/cmd/internal/rebuild"
	"pullscore/interp/takes"
)

// sends posts to a path as the page does, and returns the status and the answer.
func sends(t testing.TB, s *Server, path, body string) (int, string) {
	t.Helper()
	res, answer := ask(t, http.MethodPost, s.URL()+path, map[string]string{tokenHeader: s.token, "Content-Type": "application/json"}, body)
	return res.StatusCode, answer
}

// How takes went is kept as rows that takes reads and counts, in their order; the last can
// be taken back, but not what somebody else has written.
func TestResultsAreKept(t *testing.T) {
	s, p := copied(t, "ticket-window.pull")
	shot, log := p.Good.Shots[0], strings.TrimSuffix(p.Path, ".pull")+".takes.csv"
	tap := func(word string, take int) (int, string) {
		return sends(t, s, "api/result", fmt.Sprintf(`{"plan":%q,"shot":"12A","pull":1,"name":%q,"take":%d,"result":%q}`, p.Key, nameOf(shot, shot.Pulls[0]), take, word))
	}
	undo := func() (int, string) { return sends(t, s, "api/undo", fmt.Sprintf(`{"plan":%q}`, p.Key)) }
	if code, _ := undo(); code != http.StatusConflict {
		t.Errorf("with nothing to take back it answers %d", code)
	}
	words := []string{"sharp", "early", "late", "buzz"}
	for i, word := range words {
		if code, body := tap(word, i+1); code != http.StatusOK || body != `{"file":"ticket-window.takes.csv"}` {
			t.Fatalf("%d %s", code, body)
		}
	}
	var hits []takes.Hit
	for _, take := range written(t, log, p.Good) {
		if !take.Unmeasured || take.Shot != "12A" || take.Pull != 1 {
			t.Errorf("read as %+v", take)
		}
		hits = append(hits, take.Hit)
	}
	if want := []takes.Hit{takes.Sharp, takes.Missed, takes.Missed, takes.Missed}; !slices.Equal(hits, want) {
		t.Errorf("the takes are %v, want %v", hits, want)
	}
	text := fileText(t, log)
	for i, word := range words {
		if !strings.Contains(text, fmt.Sprintf(",12A,1,%d,%v,%s,", i+1, hits[i], word)) {
			t.Errorf("no row says that take %d was %s:\n%s", i+1, word, text)
		}
	}
	if code, body := undo(); code != http.StatusOK || len(written(t, log, p.Good)) != 3 {
		t.Errorf("taking back: %d %s", code, body)
	}
	if err := os.WriteFile(log, []byte(fileText(t, log)+"2026-03-01,,12A,1,9,yes,sharp,,,,by hand\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if code, body := undo(); code != http.StatusConflict || len(written(t, log, p.Good)) != 4 {
		t.Errorf("taking back what somebody else wrote: %d %s", code, body)
	}
	for what, body := range map[string]string{
		"another word": `{"plan":"KEY","shot":"12A","pull":1,"name":"NAME","take":1,"result":"fine"}`,
		"another pull": `{"plan":"KEY","shot":"12A","pull":1,"name":"to NOBODY","take":1,"result":"sharp"}`,
		"no shot":      `{"plan":"KEY","shot":"99","pull":1,"name":"NAME","take":1,"result":"sharp"}`,
		"take 0":       `{"plan":"KEY","shot":"12A","pull":1,"name":"NAME","take":0,"result":"sharp"}`,
		"no result":    `{"plan":"KEY","file":"/etc/passwd"}`,
	} {
		body = strings.NewReplacer("KEY", p.Key, "NAME", nameOf(shot, shot.Pulls[0])).Replace(body)
		if code, _ := sends(t, s, "api/result", body); code != http.StatusBadRequest {
			t.Errorf("%s: answered with %d", what, code)
		}
	}
}

// A log that a plan uses is never written, nor one through a link.
func TestResultsGoIntoTheirOwnLog(t *testing.T) {
	s, p := copied(t, "ticket-window.pull")
	shot, log := p.Good.Shots[0], strings.TrimSuffix(p.Path, ".pull")+".takes.csv"
	body := fmt.Sprintf(`{"plan":%q,"shot":"12A","pull":1,"name":%q,"take":1,"result":"sharp"}`, p.Key, nameOf(shot, shot.Pulls[0]))
	outside := filepath.Join(t.TempDir(), "outside")
	if err := os.WriteFile(outside, []byte("kept"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(outside, log); err != nil {
		t.Fatal(err)
	}
	if code, _ := sends(t, s, "api/result", body); code != http.StatusInternalServerError || fileText(t, outside) != "kept" {
		t.Errorf("through a link: %d, and the file holds %q", code, fileText(t, outside))
	}
	if err := os.Remove(log); err != nil {
		t.Fatal(err)
	}
	p.Files = append(p.Files, log)
	s.Show(&rebuild.State{Plans: []*rebuild.Plan{p}, Version: 2})
	if code, _ := sends(t, s, "api/result", body); code != http.StatusConflict {
		t.Errorf("a log that the plan uses: %d", code)
	}
}

func fileText(t testing.TB, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// A finger taps how takes went: each tap is a row, one after the other goes through the
// pulls, and undo takes the last back. Everybody can use it.
func TestFourButtons(t *testing.T) {
	axe := axeSource(t)
	s, p := copied(t, "ticket-window.pull")
	log := strings.TrimSuffix(p.Path, ".pull") + ".takes.csv"
	b := newTab(t, 390, 844)
	b.open(s)
	b.until(complete)
	rows := func() (list []string) {
		for _, take := range written(t, log, p.Good) {
			list = append(list, fmt.Sprintf("%d %v", take.Pull, take.Hit))
		}
		return list
	}
	for i, word := range []string{"sharp", "late", "buzz"} {
		b.do(chromedp.TapXY(b.middle(`#after [data-word=` + word + `]`)))
		b.until(fmt.Sprintf(`document.querySelector(".after-said").textContent.includes("%s: kept in ticket-window.takes.csv")`, word))
		if n := len(rows()); n != i+1 {
			t.Fatalf("after %d taps the log has %d rows", i+1, n)
		}
	}
	b.picture("tapped")
	b.clickOn(`#after .after-keys button:last-child`)
	b.until(`document.querySelector(".after-said").textContent.startsWith("Taken back")`)
	if want, pulls := rows(), len(p.Good.Shots[0].Pulls); len(want) != 2 || pulls < 2 || want[0] != "1 yes" || want[1] != "2 no" {
		t.Errorf("the log has %q, of %d pulls", want, pulls)
	}
	b.do(chromedp.Evaluate[chromedp.Void](axe))
	b.checkAccess("light")
}
