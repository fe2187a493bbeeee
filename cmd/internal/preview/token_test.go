package preview

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The token of a port and a folder stays, and that of another is another.
func TestTheTokenIsKept(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "caches", "pullscore")
	now := time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC)
	token := func(port, folder string, fresh bool, at time.Time) string {
		t.Helper()
		got, err := accessToken(dir, port, folder, fresh, at)
		if err != nil || len(got) < 20 {
			t.Fatalf("%q, %v", got, err)
		}
		return got
	}
	first := token("8080", "/films", false, now)
	for what, got := range map[string]string{
		"at once": token("8080", "/films", false, now), "29 days later": token("8080", "/films", false, now.AddDate(0, 0, 29)),
	} {
		if got != first {
			t.Errorf("%s the token is another", what)
		}
	}
	for what, got := range map[string]string{
		"another port": token("8081", "/films", false, now), "another folder": token("8080", "/film", false, now),
		"30 days later": token("8080", "/films", false, now.AddDate(0, 0, 30)),
	} {
		if got == first {
			t.Errorf("%s has the same token", what)
		}
	}
	second := token("8080", "/films", true, now)
	if second == first || token("8080", "/films", false, now) != second {
		t.Error("a new token was wanted, and is not the one that is kept")
	}
	files, err := filepath.Glob(filepath.Join(dir, "*"))
	if err != nil || len(files) != 3 {
		t.Fatalf("%v, %v", files, err)
	}
	for _, file := range files {
		if info, err := os.Stat(file); err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("%s: %v, %v", file, info.Mode(), err)
		}
	}
}

// A token that others could have read or written, or that is no token, is not
// taken.
func TestATokenThatIsNotTrusted(t *testing.T) {
	now := time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC)
	for what, spoil := range map[string]func(file string) error{
		"others can read it": func(file string) error { return os.Chmod(file, 0o644) },
		"it is a link": func(file string) error {
			away := filepath.Join(filepath.Dir(filepath.Dir(file)), "away.json")
			return errors.Join(os.Rename(file, away), os.Symlink(away, file))
		},
		"it is cut off": func(file string) error { return os.Truncate(file, 20) },
		"it is short": func(file string) error {
			return os.WriteFile(file, []byte(`{"token":"x","made":"2026-03-01T09:00:00Z"}`), 0o600)
		},
		"it has no date": func(file string) error {
			return os.WriteFile(file, []byte(`{"token":"`+strings.Repeat("A", 26)+`"}`), 0o600)
		},
	} {
		t.Run(what, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "kept")
			first, err := accessToken(dir, "8080", "/films", false, now)
			if err != nil {
				t.Fatal(err)
			}
			files, _ := filepath.Glob(filepath.Join(dir, "*.json"))
			if len(files) != 1 {
				t.Fatal(files)
			}
			if err := spoil(files[0]); err != nil {
				t.Skip(err)
			}
			next, err := accessToken(dir, "8080", "/films", false, now)
			if err != nil || next == first || strings.Contains(next, "x") {
				t.Errorf("the token is %q, %v", next, err)
			}
			if again, err := accessToken(dir, "8080", "/films", false, now); err != nil || again != next {
				t.Errorf("the new token is not kept: %v", err)
			}
		})
	}
}

// Where no token can be kept, there is one for this run, and a word why.
func TestATokenThatCannotBeKept(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := New(Options{Addr: "0.0.0.0:" + freePort(t), Tokens: filepath.Join(file, "below"), Folder: "/films"})
	if err != nil {
		t.Fatal(err)
	}
	defer s.listener.Close()
	if s.Unkept() == nil || len(s.access) < 20 {
		t.Errorf("the token %q is kept: %v", s.access, s.Unkept())
	}
	other, err := New(Options{Addr: "0.0.0.0:0", Tokens: filepath.Join(file, "below")})
	if err != nil {
		t.Fatal(err)
	}
	defer other.listener.Close()
	if other.Unkept() != nil || len(other.access) < 20 {
		t.Errorf("the token %q of a port of its own: %v", other.access, other.Unkept())
	}
}

// freePort returns a port that nobody listens at.
func freePort(t *testing.T) string {
	t.Helper()
	s, err := New(Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.listener.Close()
	return s.hosts.port
}
