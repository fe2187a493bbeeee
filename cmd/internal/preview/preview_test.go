package preview

import (
	"bytes"
	"context"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"pullscore/cmd/internal/rebuild"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/render/sheet"
)

// tooLong is when a test gives up on what does not come. It costs time only
// where a test fails, and is longer than a busy machine takes.
const tooLong = 30 * time.Second

// examples is where the plans of the examples lie.
const examples = "../../../examples"

// reading returns what a plan's text comes to, as a watch would tell it.
// before is the plan before the text changed, or nil.
func reading(t testing.TB, path, src string, before *rebuild.Plan) *rebuild.Plan {
	t.Helper()
	res := interp.Interpret(path, []byte(src), interp.Options{})
	p := &rebuild.Plan{
		Key: "k" + filepath.Base(path)[:1], Name: filepath.Base(path), Path: path, Version: 1,
		Latest: res.Plan, Findings: res.Findings, Sources: res.Sources, Files: res.Files,
	}
	if before != nil {
		p.Version = before.Version + 1
	}
	if worst, ok := lang.Worst(res.Findings); ok && worst == lang.Error {
		p.Stale = true
		if before != nil {
			p.Good, p.GoodFindings, p.Sheets = before.Good, before.GoodFindings, before.Sheets
		}
		return p
	}
	p.Good, p.GoodFindings, p.Sheets = p.Latest, p.Findings, sheets(t, p.Latest)
	return p
}

func sheets(t testing.TB, p *plan.Plan) map[string][]*rebuild.Sheet {
	t.Helper()
	all := map[string][]*rebuild.Sheet{}
	for _, s := range p.Shots {
		all[s.ID] = rebuild.Score(s, nil, sheet.Paper{})
	}
	return all
}

// example returns the text of a plan of the examples, and its path.
func example(t testing.TB, name string) (path, src string) {
	t.Helper()
	path = filepath.Join(examples, name)
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return path, string(b)
}

// exampleState returns the state of watched examples.
func exampleState(t testing.TB, version uint64, names ...string) *rebuild.State {
	t.Helper()
	state := &rebuild.State{Version: version}
	for _, name := range names {
		path, src := example(t, name)
		state.Plans = append(state.Plans, reading(t, path, src, nil))
	}
	return state
}

// replaced returns a state in which a plan stands for the one of its key.
func replaced(before *rebuild.State, p *rebuild.Plan) *rebuild.State {
	after := &rebuild.State{Plans: slices.Clone(before.Plans), Version: before.Version + 1}
	for i, old := range after.Plans {
		if old.Key == p.Key {
			after.Plans[i] = p
		}
	}
	return after
}

// serve starts a server and ends it with the test.
func serve(t testing.TB, opt Options) *Server {
	t.Helper()
	s, err := New(opt)
	if err != nil {
		t.Fatal(err)
	}
	start(t, s)
	return s
}

func start(t testing.TB, s *Server) (stop func()) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(ctx) }()
	stopped := false
	stop = func() {
		if stopped {
			return
		}
		stopped = true
		cancel()
		select {
		case err := <-ended:
			if err != nil {
				t.Error(err)
			}
		case <-time.After(tooLong):
			t.Error("the server does not end")
		}
	}
	t.Cleanup(stop)
	return stop
}

// ask sends a request and returns the answer with its body read.
func ask(t testing.TB, method, url string, header map[string]string, body string) (*http.Response, string) {
	t.Helper()
	req, err := http.NewRequest(method, url, bytes.NewBufferString(body))
	if err != nil {
		t.Fatal(err)
	}
	for name, value := range header {
		if name == "Host" {
			req.Host = value
		} else {
			req.Header.Set(name, value)
		}
	}
	client := http.Client{
		Timeout:       tooLong,
		Transport:     &http.Transport{DisableKeepAlives: true},
		CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
	}
	res, err := client.Do(req)
	if err != nil {
		t.Fatal(err)
	}
	defer res.Body.Close()
	var b bytes.Buffer
	if _, err := b.ReadFrom(res.Body); err != nil {
		t.Fatal(err)
	}
	return res, b.String()
}
