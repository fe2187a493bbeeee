// URIs to paths and back.

package editor

import (
	"net/url"
	"path/filepath"
	"strings"
)

// pathOf returns the path that a URI names. ok is false for a URI that names no file,
// such as that of a text that was never saved.
func pathOf(uri string) (path string, ok bool) {
	u, err := url.Parse(uri)
	if err != nil || u.Scheme != "file" || u.Path == "" {
		return "", false
	}
	path = u.Path
	if hasDrive(strings.TrimPrefix(path, "/")) {
		path = path[1:]
	} else if u.Host != "" && u.Host != "localhost" {
		path = "//" + u.Host + path
	}
	return filepath.Clean(filepath.FromSlash(path)), true
}

// uriOf returns the URI of a path.
func uriOf(path string) string {
	path = filepath.ToSlash(path)
	if hasDrive(path) {
		path = "/" + path
	}
	return (&url.URL{Scheme: "file", Path: path}).String()
}

// hasDrive reports whether a path begins with the letter of a drive.
func hasDrive(path string) bool {
	return len(path) >= 2 && path[1] == ':' && ('a' <= path[0]|0x20 && path[0]|0x20 <= 'z')
}
