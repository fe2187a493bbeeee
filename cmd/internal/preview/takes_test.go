package preview

import (
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"math"
	"math/rand/v2"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

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
func written(t testing.TB, file string, plans ...*plan.Plan) []takes.Take {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var list []takes.Take
	for r := takes.NewReader(f, file, plans...); ; {
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
	shot, log := p.Good.Shots[0], strings.TrimSuffix(p.Path, ".pull")+".tries.csv"
	pull := shot.Pulls[0]
	inside := float64(pull.WindowHand[1]-pull.ToDeg*shot.Gear) * 0.9
	outside := float64(pull.WindowHand[1]-pull.ToDeg*shot.Gear) * 1.1
	for _, past := range []float64{0, inside, outside} {
		res, body := postTo(t, s, fmt.Sprintf(`{"plan":%q,"shot":"12A","pull":1,"sign":%q,"by":"wheel","error_deg":%g,"time_s":1.25}`, p.Key, signOf(shot, pull), past))
		if res.StatusCode != http.StatusOK || body != `{"file":"ticket-window.tries.csv"}` {
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
	if _, err := os.Stat(logOf(p.Path)); !os.IsNotExist(err) {
		t.Error("a log was made of takes that cannot be")
	}
}

func TestLogThatCannotBeWritten(t *testing.T) {
	s, p := copied(t, "ticket-window.pull")
	elsewhere := filepath.Join(t.TempDir(), "elsewhere")
	if err := os.Symlink(elsewhere, logOf(p.Path)); err != nil {
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
	if got := len(written(t, logOf(p.Path))); got != many {
		t.Errorf("%d takes of %d are kept", got, many)
	}
}

// Tries are kept beside the plan, whatever log the plan names for its puller.
func TestTriesStayOutOfLogs(t *testing.T) {
	for plan, want := range map[string]string{"a/scene.pull": "a/scene.tries.csv", "scene.pull": "scene.tries.csv", "a.b/scene": "a.b/scene.tries.csv"} {
		if got := logOf(filepath.FromSlash(plan)); got != filepath.FromSlash(want) {
			t.Errorf("the tries at %s are kept in %s, want %s", plan, got, want)
		}
	}
	if got := logOf(strings.Repeat("ж", 125) + ".pull"); len(got) > longestName || !utf8.ValidString(got) || !strings.HasSuffix(got, "жж"+logSuffix) {
		t.Errorf("the tries at a plan of a long name are kept in %q", got)
	}
	const logged = "travel_deg,error_deg,time_s\n50,1,1.2\n"
	s, p, folder := pulledBy(t, map[string]string{"orsa.csv": logged}, "takes \"orsa.csv\"")
	if res, text := postTo(t, s, tryAt(p)); res.StatusCode != http.StatusOK || text != `{"file":"ticket-window.tries.csv"}` {
		t.Fatalf("%d %s", res.StatusCode, text)
	}
	if b, err := os.ReadFile(filepath.Join(folder, "orsa.csv")); err != nil || string(b) != logged {
		t.Errorf("the puller's log holds %q, %v", b, err)
	}
	if list := written(t, logOf(p.Path)); len(list) != 1 || list[0].Error != 1 || list[0].Note != "page, MIDI controller" {
		t.Errorf("the log of tries has %+v", list)
	}
}

// A log that any takes statement of any watched plan names is never written to,
// by whatever name, and whether it is there yet or not.
func TestNoTryGoesIntoALogThatAPlanNames(t *testing.T) {
	const logged = "travel_deg,error_deg,time_s\n50,1,1.2\n"
	for name, c := range map[string]struct {
		files map[string]string
		takes string
		links [2]string
	}{
		"its very name":    {map[string]string{"ticket-window.tries.csv": logged}, "takes \"ticket-window.tries.csv\"", [2]string{}},
		"not there yet":    {nil, "takes \"ticket-window.tries.csv\"", [2]string{}},
		"another spelling": {map[string]string{"ticket-window.tries.csv": logged}, "takes \"./ticket-window.tries.csv\"", [2]string{}},
		"a second name":    {map[string]string{"orsa.csv": logged}, "takes \"orsa.csv\"", [2]string{"orsa.csv", "ticket-window.tries.csv"}},
	} {
		t.Run(name, func(t *testing.T) {
			s, p, folder := pulledBy(t, c.files, c.takes)
			if c.links[0] != "" {
				if err := os.Link(filepath.Join(folder, c.links[0]), filepath.Join(folder, c.links[1])); err != nil {
					t.Skip(err)
				}
			}
			if res, text := postTo(t, s, tryAt(p)); res.StatusCode != http.StatusConflict || !strings.Contains(text, "ticket-window.tries.csv") || strings.Contains(text, folder) {
				t.Errorf("%d %s", res.StatusCode, text)
			}
			if b, err := os.ReadFile(logOf(p.Path)); err == nil && string(b) != logged {
				t.Errorf("the log holds %q", b)
			} else if c.files == nil && err == nil {
				t.Error("a log was made")
			}
		})
	}
	t.Run("another plan", func(t *testing.T) {
		s, p := copied(t, "ticket-window.pull")
		_, other, _ := pulledBy(t, nil, fmt.Sprintf("takes %q", logOf(p.Path)))
		other.Key = "another"
		s.Show(&rebuild.State{Plans: []*rebuild.Plan{p, other}, Version: 2})
		if res, text := postTo(t, s, tryAt(p)); res.StatusCode != http.StatusConflict {
			t.Errorf("%d %s", res.StatusCode, text)
		}
	})
}

// tryAt returns a try at the first pull of a plan.
func tryAt(p *rebuild.Plan) string {
	shot := drawnOf(p).Shots[0]
	return fmt.Sprintf(`{"plan":%q,"shot":%q,"pull":1,"sign":%q,"by":"midi","error_deg":1,"time_s":1}`, p.Key, shot.ID, signOf(shot, shot.Pulls[0]))
}

// pulledBy serves an example whose puller has that statement, beside files.
func pulledBy(t testing.TB, files map[string]string, statement string) (*Server, *rebuild.Plan, string) {
	t.Helper()
	folder := t.TempDir()
	all := map[string]string{"kit.pull": second(example(t, "kit.pull"))}
	maps.Copy(all, files)
	for name, text := range all {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	good := second(example(t, "ticket-window.pull"))
	path := filepath.Join(folder, "ticket-window.pull")
	p := reading(t, path, good+"\npuller ORSA\n  "+statement+"\n", reading(t, path, good, nil))
	s := serve(t, Options{})
	s.Show(&rebuild.State{Plans: []*rebuild.Plan{p}, Version: 1})
	return s, p, folder
}

// A log of tries may have any columns of a log that can be read, in any order:
// what was kept is read again, says the same, and is never of a hand.
func TestTriesInAnyColumns(t *testing.T) {
	all := []string{
		"plan", "shot", "pull", "take", "clip", "timecode", "landed", "time_s", "hit", "result", "distance_m", "stop",
		"travel_deg", "error_deg", "rim_mm", "puller", "date", "note",
	}
	columns := [][]string{all, {"plan", "shot", "pull", "landed", "time_s", "hit"}, {"result"}, {"plan", "shot", "pull", "result"}, {"travel_deg", "error_deg", "time_s"}}
	r := rand.New(rand.NewPCG(1, 18))
	for range 60 {
		some := slices.Clone(all)
		r.Shuffle(len(some), func(i, j int) { some[i], some[j] = some[j], some[i] })
		columns = append(columns, some[:6+r.IntN(len(some)-5)])
	}
	kept := 0
	for _, some := range columns {
		if triesIn(t, some) {
			kept++
		}
	}
	if refused := len(columns) - kept; kept < 20 || refused < 5 {
		t.Errorf("tries are kept in %d of %d logs: the test shows little", kept, len(columns))
	}
}

// triesIn keeps tries in a log with those columns, and reports whether they can
// be.
func triesIn(t *testing.T, columns []string) bool {
	has := func(names ...string) bool {
		return !slices.ContainsFunc(names, func(n string) bool { return !slices.Contains(columns, n) })
	}
	header := strings.Join(columns, ",")
	measured := has("travel_deg", "error_deg", "time_s") || has("shot", "pull", "landed", "time_s")
	counted := (has("hit") || has("result")) && !has("landed") && !has("error_deg")
	s, p := copied(t, "ticket-window.pull")
	if err := os.WriteFile(logOf(p.Path), []byte(header), 0o644); err != nil {
		t.Fatal(err)
	}
	shot := p.Good.Shots[0]
	for _, past := range []float64{0, 1.5, -3, 12} {
		body := fmt.Sprintf(`{"plan":%q,"shot":"12A","pull":1,"sign":%q,"by":"keys","error_deg":%g,"time_s":1.25}`, p.Key, signOf(shot, shot.Pulls[0]), past)
		res, text := postTo(t, s, body)
		if !measured && !counted {
			if res.StatusCode != http.StatusInternalServerError || !strings.Contains(text, "the log has no column ") || strings.Contains(text, filepath.Dir(p.Path)) {
				t.Errorf("%s: %d %s", header, res.StatusCode, text)
			}
			return false
		}
		if res.StatusCode != http.StatusOK {
			t.Fatalf("%s: %d %s", header, res.StatusCode, text)
		}
		list := written(t, logOf(p.Path), p.Good)
		got := list[len(list)-1]
		if got.Unmeasured == measured || measured && (math.Abs(got.Error-past) > 0.01 || got.Time != 1.25) || !got.OnPage() ||
			(has("hit") || has("result")) && got.Hit != hitOf(shot, shot.Pulls[0], past) {
			t.Errorf("%s: of %g° past the mark the log says %+v", header, past, got)
		}
	}
	return true
}

// Whatever a kit says, tries are no takes of a hand: a log of them shows none,
// also where it has no column for a note.
func TestTriesAreOfNoHand(t *testing.T) {
	const tries = "travel_deg,error_deg,time_s\n50,9,1.2\n50,-9,1.2\n50,9,1.2\n"
	_, with, _ := pulledBy(t, map[string]string{"ticket-window.tries.csv": tries}, "takes \"ticket-window.tries.csv\"")
	_, without, _ := pulledBy(t, nil, "limit 900 deg/s")
	_, other, _ := pulledBy(t, map[string]string{"ticket-window.csv": tries}, "takes \"ticket-window.csv\"")
	chance := func(p *rebuild.Plan) plan.Number { return drawnOf(p).Shots[0].Pulls[0].Chance }
	if chance(with) != chance(without) {
		t.Errorf("with a log of tries the chance is %v, without %v", chance(with), chance(without))
	}
	if chance(other) == chance(without) {
		t.Errorf("with the same rows in another log the chance is %v too: the test shows nothing", chance(other))
	}
}

// While the log is swapped for a link and back, nothing behind the link is
// written to, be it outside of the folder or within.
func TestALinkSwappedIn(t *testing.T) {
	_, p := copied(t, "ticket-window.pull")
	log := logOf(p.Path)
	outside := filepath.Join(t.TempDir(), "outside.csv")
	inside := filepath.Join(filepath.Dir(p.Path), "inside.csv")
	for _, file := range []string{outside, inside, log} {
		if err := os.WriteFile(file, []byte(takes.Header), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	stop := make(chan struct{})
	var swapping sync.WaitGroup
	swapping.Go(func() {
		for n := 0; ; n++ {
			select {
			case <-stop:
				return
			default:
			}
			// The log itself is only moved away, so that no row of it is lost.
			if os.Rename(log, log+".away") != nil {
				continue
			}
			os.Symlink([]string{outside, "inside.csv"}[n%2], log) //nolint:errcheck // counted below
			os.Remove(log)                                        //nolint:errcheck
			os.Rename(log+".away", log)                           //nolint:errcheck
		}
	})
	kept := 0
	for range 1000 {
		if appendTake(log, takes.Header, takes.Take{Travel: 60, Error: 1, Time: 0.9}) == nil {
			kept++
		}
	}
	close(stop)
	swapping.Wait()
	for _, file := range []string{outside, inside} {
		if b, err := os.ReadFile(file); err != nil || string(b) != takes.Header {
			t.Fatalf("%s holds %.200q, %v", filepath.Base(file), b, err)
		}
	}
	if kept == 0 {
		t.Error("nothing was kept at all: the test shows nothing")
	}
}

func second(_, text string) string { return text }
