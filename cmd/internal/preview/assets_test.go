package preview

import (
	"net/http"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

func TestFilesOfThePage(t *testing.T) {
	s := serve(t, Options{})
	for name, f := range s.assets.files {
		res, body := ask(t, "GET", strings.TrimSuffix(s.URL(), "/")+name, nil, "")
		if res.StatusCode != http.StatusOK || res.Header.Get("Content-Type") != f.kind || res.Header.Get("Cache-Control") != "no-cache" {
			t.Errorf("%s: %d, %s, %s", name, res.StatusCode, res.Header.Get("Content-Type"), res.Header.Get("Cache-Control"))
		}
		if name != "/index.html" && body != string(f.body) {
			t.Errorf("%s is sent otherwise than it is", name)
		}
		tag := res.Header.Get("ETag")
		again, _ := ask(t, "GET", strings.TrimSuffix(s.URL(), "/")+name, map[string]string{"If-None-Match": tag}, "")
		if again.StatusCode != http.StatusNotModified {
			t.Errorf("%s with the tag %s: %d", name, tag, again.StatusCode)
		}
	}
}

func TestThePageHasTheTokenOfItsRun(t *testing.T) {
	a, b := serve(t, Options{}), serve(t, Options{})
	resA, bodyA := ask(t, "GET", a.URL(), nil, "")
	resB, bodyB := ask(t, "GET", b.URL(), nil, "")
	if !strings.Contains(bodyA, `content="`+a.token+`"`) || !strings.Contains(bodyB, `content="`+b.token+`"`) || strings.Contains(bodyA, "{{") {
		t.Errorf("the pages are %q and %q", bodyA, bodyB)
	}
	if resA.Header.Get("ETag") == resB.Header.Get("ETag") {
		t.Error("pages of two runs have one tag: a browser would keep the old token")
	}
	if a.assets.tag != b.assets.tag {
		t.Error("the same files have two tags: every page would load again")
	}
}

// outside finds what a file would load from another address.
var outside = regexp.MustCompile(`(?i)(https?:)?//[a-z0-9.-]+\.[a-z]{2,}|@import|url\(\s*['"]?(https?:|data:)`)

// inline finds scripts and styles within a page, which its policy forbids.
var inline = regexp.MustCompile(`(?i)<script(?:[^>]*)>[^<]|<style|\sstyle=|\son[a-z]+=|javascript:`)

func TestNothingIsLoadedFromElsewhere(t *testing.T) {
	for name, f := range loadAssets().files {
		if filepath.Ext(name) == ".ttf" {
			continue
		}
		text := strings.ReplaceAll(string(f.body), `"http://www.w3.org/2000/svg"`, "")
		if found := outside.FindString(text); found != "" {
			t.Errorf("%s refers to %s", name, found)
		}
		if found := inline.FindString(text); found != "" && filepath.Ext(name) == ".html" {
			t.Errorf("%s has %q within", name, found)
		}
		for _, sink := range []string{"innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "eval(", "new Function"} {
			if filepath.Ext(name) == ".js" && strings.Contains(text, sink) {
				t.Errorf("%s has %s: text could become markup", name, sink)
			}
		}
	}
}
