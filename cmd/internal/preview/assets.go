// The files of the page. All are in the binary, and a request finds one by its
// whole path or not at all.

package preview

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"io/fs"
	"net/http"
	"path"
	"slices"
	"strings"
	"time"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"pullscore/render/svg"
)

//go:embed web
var web embed.FS

// An asset is a file as it is served.
type asset struct {
	kind string // its media type
	tag  string // its ETag
	body []byte
}

// assets are all files by path.
type assets struct {
	files map[string]asset
	tag   string // of all of them together
}

// loadAssets gathers the files: those of the page, the fonts that drawings are
// measured with, and the colours of the drawings' inks.
func loadAssets() *assets {
	a := &assets{files: map[string]asset{}}
	root, err := fs.Sub(web, "web")
	if err != nil {
		panic(err) // the folder is in the binary
	}
	entries, err := fs.ReadDir(root, ".")
	if err != nil {
		panic(err)
	}
	for _, e := range entries {
		body, err := fs.ReadFile(root, e.Name())
		if err != nil {
			panic(err)
		}
		a.add("/"+e.Name(), body)
	}
	a.add("/go-regular.ttf", goregular.TTF)
	a.add("/go-bold.ttf", gobold.TTF)
	a.add("/inks.css", []byte(svg.Style(".sheet")))
	a.seal()
	return a
}

// kinds are the media types of the files, set here since what a system knows
// of them differs.
var kinds = map[string]string{
	".html": "text/html; charset=utf-8",
	".css":  "text/css; charset=utf-8",
	".js":   "text/javascript; charset=utf-8",
	".svg":  "image/svg+xml",
	".ttf":  "font/ttf",
}

func (a *assets) add(name string, body []byte) {
	kind, ok := kinds[path.Ext(name)]
	if !ok {
		panic("preview: no media type for " + name)
	}
	a.files[name] = asset{kind: kind, tag: tagOf(body), body: body}
}

// seal works out the tag of all files.
func (a *assets) seal() {
	var tags []string
	for name, f := range a.files {
		tags = append(tags, name+f.tag)
	}
	slices.Sort(tags)
	a.tag = tagOf([]byte(strings.Join(tags, "\n")))
}

// tagOf returns a tag that two texts share only if they are the same.
func tagOf(body []byte) string {
	sum := sha256.Sum256(body)
	return `"` + hex.EncodeToString(sum[:12]) + `"`
}

// The places in the page's own file where the run's token goes.
var tokenMark = []byte("{{token}}")

// noTime is the time of files that know none: the tag tells them apart.
var noTime time.Time

// getAsset answers with a file. Browsers ask each time whether they have the
// newest, since a new program may answer at an old address.
func (s *Server) getAsset(w http.ResponseWriter, r *http.Request) {
	name := r.URL.Path
	if name == "/" {
		name = "/index.html"
	}
	f, ok := s.assets.files[name]
	if !ok {
		http.NotFound(w, r)
		return
	}
	if name == "/index.html" {
		f.body = bytes.ReplaceAll(f.body, tokenMark, []byte(s.token))
		f.tag = tagOf(f.body)
	}
	h := w.Header()
	h.Set("Content-Type", f.kind)
	h.Set("Cache-Control", "no-cache")
	h.Set("ETag", f.tag)
	http.ServeContent(w, r, "", noTime, bytes.NewReader(f.body))
}
