package lsp

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
)

func TestFrames(t *testing.T) {
	for text, want := range map[string]string{
		"":                            "the end",
		"Content-Length: 2\r\n\r\n{}": "{}",
		"content-length:2\n\n{}":      "{}",
		"Content-Length: 0\r\n\r\n":   "",
		"Content-Type: application/vscode-jsonrpc; charset=utf-8\r\nContent-Length: 2\r\n\r\n{}": "{}",
		"Content-Length: 3\r\n\r\n{}":              "it ends after 2 of 3 bytes",
		"Content-Length: 4\r\n":                    "it ends within its header",
		"Content-Len":                              "it ends within its header",
		"\r\n{}":                                   "its header has no Content-Length",
		"Content-Length 2\r\n\r\n{}":               "is no line of a header",
		"Content-Length: two\r\n\r\n{}":            "is no length",
		"Content-Length: -2\r\n\r\n{}":             "is no length",
		"Content-Length: 99999999\r\n\r\n{}":       "is no length",
		strings.Repeat("a", 2000):                  "more than 1024 bytes",
		strings.Repeat("a: b\r\n", 40) + "\r\n":    "more than 32 lines",
		"Content-Length: 18446744073709551617\n\n": "is no length",
	} {
		got, err := NewStream(strings.NewReader(text), io.Discard).Read()
		said := string(got)
		var frame *FrameError
		switch {
		case errors.Is(err, io.EOF):
			said = "the end"
		case errors.As(err, &frame):
			said = err.Error()
		case err != nil:
			t.Errorf("%.40q: %v", text, err)
		}
		if said != want && (err == nil || want == "" || !strings.Contains(said, want)) {
			t.Errorf("%.40q: %q, not %q", text, said, want)
		}
	}
}

// FuzzFrames reads anything as frames: it ends, and what is read can be written and read
// again.
func FuzzFrames(f *testing.F) {
	f.Add([]byte("Content-Length: 2\r\n\r\n{}Content-Length: 4\r\n\r\nnull"))
	f.Add([]byte("Content-Type: a\r\ncontent-length:1\n\n1\r\n"))
	f.Add([]byte("Content-Length: 7\r\nContent-Length: 1\r\n\r\n[]"))
	f.Fuzz(func(t *testing.T, text []byte) {
		in := NewStream(bytes.NewReader(text), io.Discard)
		var messages [][]byte
		for {
			m, err := in.Read()
			if err != nil {
				var frame *FrameError
				if !errors.Is(err, io.EOF) && !errors.As(err, &frame) {
					t.Fatal(err)
				}
				break
			}
			messages = append(messages, m)
			if m, fault := parse(m); m == nil && fault == nil {
				t.Fatal("neither a message nor a fault")
			}
		}
		var again bytes.Buffer
		out := NewStream(&again, &again)
		for _, m := range messages {
			if err := out.Write(m); err != nil {
				t.Fatal(err)
			}
		}
		for i, m := range messages {
			if got, err := out.Read(); err != nil || !bytes.Equal(got, m) {
				t.Fatalf("message %d is %q, not %q: %v", i, got, m, err)
			}
		}
		if _, err := out.Read(); !errors.Is(err, io.EOF) {
			t.Fatalf("there is more: %v", err)
		}
	})
}

// A server whose client does not read goes on reading.
func TestSlowClient(t *testing.T) {
	var questions bytes.Buffer
	in := NewStream(nil, &questions)
	for i := range 1000 {
		if err := in.Write([]byte(fmt.Sprintf(`{"jsonrpc":"2.0","id":%d,"method":"a"}`, i))); err != nil {
			t.Fatal(err)
		}
	}
	fromServer, toClient := io.Pipe()
	c := NewConn(NewStream(&questions, toClient), func(line string) { t.Error(line) })
	ended := make(chan error)
	go func() { ended <- c.Serve(t.Context(), echo{}) }()
	answers := NewStream(fromServer, nil)
	seen := map[string]bool{}
	for range 1000 {
		text, err := answers.Read()
		if err != nil {
			t.Fatal(err)
		}
		m, fault := parse(text)
		if fault != nil || string(m.Result) != `"a"` {
			t.Fatalf("%s", text)
		}
		seen[string(m.ID)] = true
	}
	if err := <-ended; !errors.Is(err, io.EOF) || len(seen) != 1000 {
		t.Errorf("%v, %d answers", err, len(seen))
	}
	if a, b := Ended(io.EOF, true), Ended(&FrameError{}, true); a != 1 || b != 2 {
		t.Errorf("exit codes %d, %d", a, b)
	}
}
