package preview

import (
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"pullscore/cmd/internal/rebuild"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
)

// copied serves a copy of an example in a folder of its own.
func copied(t testing.TB, name string) (*Server, *rebuild.Plan) {
	t.Helper()
	folder := t.TempDir()
	for _, name := range []string{name, "kit.pull"} {
		_, src := example(t, name)
		if err := os.WriteFile(filepath.Join(folder, name), []byte(src), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(folder, name)
	_, src := example(t, name)
	p := reading(t, path, src, nil)
	s := serve(t, Options{})
	s.Show(&rebuild.State{Plans: []*rebuild.Plan{p}, Version: 1})
	return s, p
}

// postTo posts a take as the page does.
func postTo(t testing.TB, s *Server, body string) (*http.Response, string) {
	t.Helper()
	return ask(t, http.MethodPost, s.URL()+"api/take", map[string]string{tokenHeader: s.token, "Content-Type": "application/json"}, body)
}

// written reads a log as the rest of the program does.
func written(t testing.TB, file string) []takes.Take {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var list []takes.Take
	for r := takes.NewReader(f, file); ; {
		take, err := r.Read()
		if err == io.EOF {
			return list
		}
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, take)
	}
}

func TestTakesAreKept(t *testing.T) {
	s, p := copied(t, "ticket-window.pull")
	shot, log := p.Good.Shots[0], strings.TrimSuffix(p.Path, ".pull")+".takes.csv"
	pull := shot.Pulls[0]
	inside := float64(pull.WindowHand[1]-pull.ToDeg*shot.Gear) * 0.9
	outside := float64(pull.WindowHand[1]-pull.ToDeg*shot.Gear) * 1.1
	for _, past := range []float64{0, inside, outside} {
		res, body := postTo(t, s, fmt.Sprintf(`{"plan":%q,"shot":"12A","pull":1,"sign":%q,"by":"wheel","error_deg":%g,"time_s":1.25}`, p.Key, signOf(shot, pull), past))
		if res.StatusCode != http.StatusOK || body != `{"file":"ticket-window.takes.csv"}` {
			t.Fatalf("%d %s", res.StatusCode, body)
		}
	}
	list := written(t, log)
	if len(list) != 3 {
		t.Fatalf("%d takes are kept", len(list))
	}
	for i, hit := range []takes.Hit{takes.Sharp, takes.Sharp, takes.Missed} {
		k := list[i]
		if k.Plan != p.Good.Title || k.Shot != "12A" || k.Pull != 1 || k.Hit != hit || k.Time != 1.25 || k.Note != "page, mouse wheel" || k.Date == "" {
			t.Errorf("take %d is %+v", i+1, k)
		}
		if d := k.Travel - float64(pull.HandDeg); d > 1e-3 || d < -1e-3 {
			t.Errorf("take %d travels %g°, the pull %g°", i+1, k.Travel, float64(pull.HandDeg))
		}
	}
}

// A landing past the mark lies nearer where the pull goes nearer.
func TestHitsGoWithTheTravel(t *testing.T) {
	_, p := copied(t, "ticket-window.pull")
	for _, shot := range p.Good.Shots {
		for _, pull := range shot.Pulls {
			back := *pull
			for _, edge := range []struct {
				deg  plan.Number
				open bool
			}{{pull.WindowHand[0], pull.OpenNear}, {pull.WindowHand[1], pull.OpenFar}} {
				past := float64(edge.deg - pull.ToDeg*shot.Gear)
				if pull.ToDeg < pull.FromDeg {
					past = -past
				}
				if hitOf(shot, &back, past*0.99) != takes.Sharp {
					t.Errorf("%s pull %d: %g° past the mark is missed", shot.ID, pull.Number, past*0.99)
				}
				if !edge.open && hitOf(shot, &back, past*1.01) != takes.Missed {
					t.Errorf("%s pull %d: %g° past the mark is sharp", shot.ID, pull.Number, past*1.01)
				}
			}
		}
	}
}

func TestTakesThatCannotBe(t *testing.T) {
	s, p := copied(t, "ticket-window.pull")
	sign := signOf(p.Good.Shots[0], p.Good.Shots[0].Pulls[0])
	good := map[string]any{"plan": p.Key, "shot": "12A", "pull": 1, "sign": sign, "by": "keys", "error_deg": 1, "time_s": 1}
	for name, c := range map[string]struct {
		field string
		value any
		want  int
	}{
		"another plan":      {"plan", "../../etc", http.StatusNotFound},
		"no such shot":      {"shot", "=1+1", http.StatusBadRequest},
		"no such pull":      {"pull", 99, http.StatusBadRequest},
		"no such means":     {"by", "=cmd()", http.StatusBadRequest},
		"a changed pull":    {"sign", strings.ToUpper(sign) + "0", http.StatusBadRequest},
		"another's sign":    {"sign", signOf(p.Good.Shots[0], p.Good.Shots[0].Pulls[1]), http.StatusBadRequest},
		"a wild error":      {"error_deg", 1e9, http.StatusBadRequest},
		"no time":           {"time_s", 0, http.StatusBadRequest},
		"a time too long":   {"time_s", 1e9, http.StatusBadRequest},
		"a text for number": {"error_deg", "1", http.StatusBadRequest},
		"a path":            {"file", "/tmp/x.csv", http.StatusBadRequest},
	} {
		t.Run(name, func(t *testing.T) {
			bad := map[string]any{}
			for k, v := range good {
				bad[k] = v
			}
			bad[c.field] = c.value
			body, err := json.Marshal(bad)
			if err != nil {
				t.Fatal(err)
			}
			if res, text := postTo(t, s, string(body)); res.StatusCode != c.want {
				t.Errorf("%d %s, want %d", res.StatusCode, text, c.want)
			}
		})
	}
	body, _ := json.Marshal(good)
	if res, _ := ask(t, http.MethodPost, s.URL()+"api/take", map[string]string{"Content-Type": "application/json"}, string(body)); res.StatusCode != http.StatusForbidden {
		t.Errorf("without the page's token: %d", res.StatusCode)
	}
	if _, err := os.Stat(logOf(p.Path, "")); !os.IsNotExist(err) {
		t.Error("a log was made of takes that cannot be")
	}
}

func TestLogThatCannotBeWritten(t *testing.T) {
	s, p := copied(t, "ticket-window.pull")
	elsewhere := filepath.Join(t.TempDir(), "elsewhere")
	if err := os.Symlink(elsewhere, logOf(p.Path, "")); err != nil {
		t.Skip(err)
	}
	body := fmt.Sprintf(`{"plan":%q,"shot":"12A","pull":1,"sign":%q,"by":"keys","error_deg":1,"time_s":1}`, p.Key, signOf(p.Good.Shots[0], p.Good.Shots[0].Pulls[0]))
	res, text := postTo(t, s, body)
	if res.StatusCode != http.StatusInternalServerError || strings.Contains(text, filepath.Dir(p.Path)) {
		t.Errorf("%d %s", res.StatusCode, text)
	}
	if _, err := os.Stat(elsewhere); err == nil {
		t.Error("a link was followed out of the folder")
	}
}

func TestManyTakesAtOnce(t *testing.T) {
	s, p := copied(t, "ticket-window.pull")
	const many = 40
	var wait sync.WaitGroup
	for i := range many {
		wait.Go(func() {
			body := fmt.Sprintf(`{"plan":%q,"shot":"12A","pull":1,"sign":%q,"by":"midi","error_deg":%d,"time_s":1}`, p.Key, signOf(p.Good.Shots[0], p.Good.Shots[0].Pulls[0]), i)
			if res, text := postTo(t, s, body); res.StatusCode != http.StatusOK {
				t.Errorf("%d %s", res.StatusCode, text)
			}
		})
	}
	wait.Wait()
	if got := len(written(t, logOf(p.Path, ""))); got != many {
		t.Errorf("%d takes of %d are kept", got, many)
	}
}

func TestWhereTakesAreKept(t *testing.T) {
	for _, c := range []struct{ plan, named, want string }{
		{"a/scene.pull", "", "a/scene.takes.csv"},
		{"a/scene.pull", "a/orsa.csv", "a/orsa.csv"},
		{"a/scene.pull", "a/logs/orsa.csv", "a/logs/orsa.csv"},
		{"a/scene.pull", "orsa.csv", "a/scene.takes.csv"},
		{"a/scene.pull", "/etc/orsa.csv", "a/scene.takes.csv"},
		{"scene.pull", "orsa.csv", "orsa.csv"},
	} {
		if got := logOf(filepath.FromSlash(c.plan), filepath.FromSlash(c.named)); got != filepath.FromSlash(c.want) {
			t.Errorf("the takes of %s are kept in %s, want %s", c.plan, got, c.want)
		}
	}
}

// A take goes to the log that the plan names for its puller, in the columns
// that this has.
func TestTakesOfANamedPuller(t *testing.T) {
	folder := t.TempDir()
	log := filepath.Join(folder, "orsa.csv")
	for name, text := range map[string]string{log: "travel_deg,error_deg,time_s\n50,1,1.2\n", filepath.Join(folder, "kit.pull"): second(example(t, "kit.pull"))} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	p := reading(t, filepath.Join(folder, "ticket-window.pull"), second(example(t, "ticket-window.pull"))+"\npuller ORSA\n  takes \"orsa.csv\"\n", nil)
	s := serve(t, Options{})
	s.Show(&rebuild.State{Plans: []*rebuild.Plan{p}, Version: 1})
	body := fmt.Sprintf(`{"plan":%q,"shot":"12A","pull":1,"sign":%q,"by":"midi","error_deg":1,"time_s":1}`, p.Key, signOf(drawnOf(p).Shots[0], drawnOf(p).Shots[0].Pulls[0]))
	if res, text := postTo(t, s, body); res.StatusCode != http.StatusOK || text != `{"file":"orsa.csv"}` {
		t.Fatalf("%d %s", res.StatusCode, text)
	}
	if list := written(t, log); len(list) != 2 || list[1].Error != 1 {
		t.Errorf("the log has %+v", list)
	}
}

func second(_, text string) string { return text }
