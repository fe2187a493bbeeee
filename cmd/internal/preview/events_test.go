package preview

import (
	"bufio"
	"context"
	"encoding/json"
	"net"
	"net/http"
	"runtime"
	"strings"
	"testing"
	"time"

	"pullscore/cmd/internal/rebuild"
)

// An event is one of the stream, as a browser reads it.
type event struct{ name, id, data string }

// stream connects and returns the events as they come; the channel is closed
// when the server ends the stream.
func (s *Server) stream(t testing.TB, last string, query ...string) (events <-chan event, leave func()) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	req, err := http.NewRequestWithContext(ctx, "GET", s.URL()+"events"+strings.Join(query, ""), nil)
	if err != nil {
		t.Fatal(err)
	}
	if last != "" {
		req.Header.Set("Last-Event-ID", last)
	}
	client := http.Client{Transport: &http.Transport{}}
	res, err := client.Do(req)
	if err != nil {
		t.Fatal(err)
	}
	if res.StatusCode != http.StatusOK || res.Header.Get("Content-Type") != "text/event-stream" {
		t.Fatalf("the stream is answered with %d, %s", res.StatusCode, res.Header.Get("Content-Type"))
	}
	ch := make(chan event, 100)
	go func() {
		defer close(ch)
		defer res.Body.Close()
		lines := bufio.NewScanner(res.Body)
		lines.Buffer(nil, 1<<20)
		var e event
		for lines.Scan() {
			line := lines.Text()
			switch {
			case strings.HasPrefix(line, "event: "):
				e.name = line[7:]
			case strings.HasPrefix(line, "id: "):
				e.id = line[4:]
			case strings.HasPrefix(line, "data: "):
				e.data += line[6:]
			case line == "" && e.data != "":
				ch <- e
				e = event{}
			}
		}
	}()
	t.Cleanup(cancel)
	return ch, cancel
}

// next returns the next event, or fails the test.
func next(t testing.TB, events <-chan event) event {
	t.Helper()
	select {
	case e, ok := <-events:
		if !ok {
			t.Fatal("the stream has ended")
		}
		return e
	case <-time.After(tooLong):
		t.Fatal("no event comes")
	}
	return event{}
}

func TestStatesComeAsEvents(t *testing.T) {
	s := serve(t, Options{})
	events, _ := s.stream(t, "")
	s.Show(exampleState(t, 6, "lantern.pull")) // before it there is nothing to tell
	first := next(t, events)
	s.Show(exampleState(t, 7, "lantern.pull", "gangway.pull"))
	second := next(t, events)
	var got struct {
		told
		Plans []toldPlan `json:"plans"`
	}
	if err := json.Unmarshal([]byte(second.data), &got); err != nil {
		t.Fatal(err)
	}
	if got.Version != 7 || len(got.Plans) != 2 || got.Token != s.token || second.id == first.id {
		t.Errorf("told %+v as %s after %s", got, second.id, first.id)
	}
	if res, body := ask(t, "GET", s.URL()+"api/state", nil, ""); body != second.data || res.Header.Get("Cache-Control") != "no-store" {
		t.Errorf("the state that is asked for is another: %s", body)
	}

	// Who comes back and has the newest is not told it again.
	again, _ := s.stream(t, second.id)
	s.Show(&rebuild.State{Version: 8})
	if e := next(t, again); !strings.HasSuffix(e.id, "-8") {
		t.Errorf("told %s again", e.id)
	}
	late, _ := s.stream(t, first.id)
	if e := next(t, late); !strings.HasSuffix(e.id, "-8") {
		t.Errorf("who comes late is told %s", e.id)
	}
}

func TestSlowBrowsersHoldNothingUp(t *testing.T) {
	s := serve(t, Options{})
	conn, err := net.Dial("tcp", "127.0.0.1:"+s.hosts.port)
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	if _, err := conn.Write([]byte("GET /events HTTP/1.1\r\nHost: 127.0.0.1:" + s.hosts.port + "\r\n\r\n")); err != nil {
		t.Fatal(err)
	}
	fast, _ := s.stream(t, "")
	big := exampleState(t, 0, "lantern.pull", "gangway.pull", "crossing.pull")
	for v := uint64(1); v <= 2000; v++ { // 10 MB and more, and nobody reads at conn
		s.Show(&rebuild.State{Plans: big.Plans, Version: v})
	}
	last := ""
	for !strings.HasSuffix(last, "-2000") {
		last = next(t, fast).id
	}
}

func TestBrowsersAreBounded(t *testing.T) {
	s := serve(t, Options{})
	var leave func()
	for range maxStreams {
		_, leave = s.stream(t, "")
	}
	res, _ := ask(t, "GET", s.URL()+"events", nil, "")
	if res.StatusCode != http.StatusServiceUnavailable || res.Header.Get("Retry-After") == "" {
		t.Errorf("one too many: %d", res.StatusCode)
	}
	leave()
	for end := time.Now().Add(tooLong); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		s.streams.mu.Lock()
		open := len(s.streams.open)
		s.streams.mu.Unlock()
		if open < maxStreams {
			s.stream(t, "")
			return
		}
	}
	t.Error("the place of one that has gone stays taken")
}

// The end comes within the second that is promised. On a busy machine the first
// try may take longer.
func TestTheEndComesWithOpenStreams(t *testing.T) {
	before := runtime.NumGoroutine()
	best := endWithStreams(t)
	for range 4 {
		if best > time.Second {
			best = min(best, endWithStreams(t))
		}
	}
	if best > time.Second {
		t.Errorf("the end took %v", best)
	}
	for end := time.Now().Add(tooLong); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		if runtime.NumGoroutine() <= before+2 {
			return
		}
	}
	t.Errorf("%d goroutines before, %d after", before, runtime.NumGoroutine())
}

// endWithStreams ends a server that five browsers listen to, sees that they are
// told nothing more, and returns how long the end took.
func endWithStreams(t *testing.T) time.Duration {
	t.Helper()
	s, err := New(Options{})
	if err != nil {
		t.Fatal(err)
	}
	stop := start(t, s)
	s.Show(&rebuild.State{Version: 1})
	var streams []<-chan event
	for range 5 {
		events, _ := s.stream(t, "")
		next(t, events)
		streams = append(streams, events)
	}
	from := time.Now()
	stop()
	took := time.Since(from)
	for _, events := range streams {
		select {
		case _, ok := <-events:
			if ok {
				t.Error("an event came after the end")
			}
		case <-time.After(tooLong):
			t.Error("a stream stays open")
		}
	}
	return took
}

func TestThePageInSightComesAlong(t *testing.T) {
	s := serve(t, Options{})
	state := exampleState(t, 1, "lantern.pull", "gangway.pull")
	s.Show(state)
	p := state.Plans[0]
	events, _ := s.stream(t, "", "?plan="+p.Key+"&shot=31C&page=1")
	sheet, told := next(t, events), next(t, events)
	tag := p.Sheets["31C"][0].Tag
	if sheet.name != "sheet" || !strings.Contains(sheet.data, tag) || told.name != "" || !strings.Contains(told.data, tag) {
		t.Errorf("the page comes as %q with %.60q, the state as %q with %.60q", sheet.name, sheet.data, told.name, told.data)
	}
	// It comes again only when it is another.
	s.Show(&rebuild.State{Plans: state.Plans, Version: 2})
	if e := next(t, events); e.name != "" {
		t.Errorf("the same page came again")
	}
	path, src := example(t, "lantern.pull")
	s.Show(replaced(&rebuild.State{Plans: state.Plans, Version: 2}, reading(t, path, strings.Replace(src, "Bridge", "Jetty", 1), p)))
	if e := next(t, events); e.name != "sheet" || !strings.Contains(e.data, "Jetty") {
		t.Errorf("the new page came as %q", e.name)
	}
	none, _ := s.stream(t, "", "?plan="+p.Key+"&shot=31C&page=9")
	if e := next(t, none); e.name != "" {
		t.Errorf("a page that is not there came as %.60q", e.data)
	}
}
