package live

import (
	"io"
	"net/http"
	"os"
	"strings"
	"testing"
	"time"
)

// src is a plan without a kit.
const src = `camera A
  sensor 24.9 mm x 18.7 mm
lens "75"
  focal 75 mm
  stops T1.9 to T16
  closest 70 cm
subject KETTLE at 2 m
shot 9A "TITLE"
  with camera A, lens "75", stop T2.8
  start on KETTLE
  hold 2 s
`

// reads returns a reader of one plan with a title.
func reads(title string) Read {
	return func(path string) ([]byte, error) {
		if path != "scene.pull" {
			return nil, os.ErrNotExist
		}
		return []byte(strings.Replace(src, "TITLE", title, 1)), nil
	}
}

func get(address string) (string, error) {
	base, _, _ := strings.Cut(address, "#")
	response, err := http.Get(base + "api/state")
	if err != nil {
		return "", err
	}
	defer response.Body.Close()
	text, err := io.ReadAll(response.Body)
	return string(text), err
}

// shows waits until the page shows some words.
func shows(t *testing.T, address, words string) {
	t.Helper()
	for late := time.Now().Add(20 * time.Second); ; time.Sleep(time.Millisecond) {
		text, err := get(address)
		if err == nil && strings.Contains(text, words) {
			return
		}
		if err != nil || time.Now().After(late) {
			t.Fatalf("the page does not show %q: %v %s", words, err, text)
		}
	}
}

// TestPage follows texts until it is closed. A reader that panics costs one drawing.
func TestPage(t *testing.T) {
	log := make(chan string, 9)
	p := &Page{Log: func(line string) { log <- line }}
	p.Turned(reads("Before")) // nobody has opened the page
	address, err := p.Open("scene.pull", "", reads("One"))
	if err != nil || !strings.HasSuffix(address, "%2F9A") {
		t.Fatal(address, err)
	}
	shows(t, address, "One")
	p.Turned(reads("Two"))
	shows(t, address, "Two")
	p.Turned(func(string) ([]byte, error) { panic("a slip") })
	if line := <-log; !strings.Contains(line, "a slip") || strings.Contains(line, "\n") {
		t.Errorf("the log has %q", line)
	}
	shows(t, address, "Two")
	for _, title := range []string{"Three", "Four", "Five"} {
		p.Turned(reads(title))
	}
	shows(t, address, "Five")
	p.Close()
	p.Close()
	if text, err := get(address); err == nil {
		t.Errorf("the page is served after its end: %s", text)
	}
	p.Turned(reads("Six"))
	if _, err := p.Open("scene.pull", "", reads("Six")); err == nil {
		t.Error("a closed page is opened again")
	}
}
