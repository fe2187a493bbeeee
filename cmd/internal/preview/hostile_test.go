// A plan whose every name would be markup, an entity or a turn of the writing
// direction: all of it is text.

package preview

import (
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
)

// hostileFile is a name that a file can have.
const hostileFile = "<img src=x onerror=ran=1>&amp;.pull"

const hostilePlan = `plan "</title><script>ran=1</script>&lt;b&gt;` + "\u202e" + `evil` + "\u202c" + `"
rate 24
watched on 12 m screen from 18 m
camera "<img src=x onerror=ran=1>"
  sensor 24.89 x 18.66 mm
  records 3840 px
  on tripod
lens "</svg><script>ran=1</script>"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
puller "<iframe srcdoc='<script>parent.ran=1</script>'>"
subject "<svg onload=ran=1>" at 1 m, deep 4 cm
subject "&#60;b&#62;` + "\u2067" + `txet" at 2 m
voice "]]><a href=javascript:ran=1>"
shot 1 "</text><script>ran=1</script><style>*{display:none}</style>"
  with camera "<img src=x onerror=ran=1>", lens "</svg><script>ran=1</script>", puller "<iframe srcdoc='<script>parent.ran=1</script>'>", stop f/2.8
  start on "<svg onload=ran=1>"
  "]]><a href=javascript:ran=1>": "<script>ran=1</script> &lt;b&gt; now", lasting 2 s
  cue "<input onfocus=ran=1 autofocus>"
  rack to "&#60;b&#62;` + "\u2067" + `txet", on 3 s, over 400 ms, because "'><base href=//x><meta http-equiv=refresh content=0>"
  hold 2 s
`

// hostileErrors has names in errors, which are only told and not drawn.
const hostileErrors = hostilePlan + `  rack to "<script>ran=1</script>` + "\u202e" + `", over 1 s
`

func TestHostileNamesAreText(t *testing.T) {
	s := serve(t, Options{})
	for what, src := range map[string]string{"names": hostilePlan, "errors": hostileErrors} {
		p := reading(t, hostileFile, src, reading(t, hostileFile, hostilePlan, nil))
		if len(p.Findings) == 0 || len(p.Sheets["1"]) == 0 {
			t.Fatalf("%s: %d findings, %d pages: the plan tests nothing", what, len(p.Findings), len(p.Sheets["1"]))
		}
		state := exampleState(t, 2)
		state.Plans = append(state.Plans, p)
		s.Show(state)
		res, told := ask(t, "GET", s.URL()+"api/state", nil, "")
		if strings.ContainsAny(told, "<>&\u202e\u2067") || res.Header.Get("Content-Type") != "application/json" {
			t.Errorf("%s: the state holds markup, or marks that turn what is beside them, as %s", what, res.Header.Get("Content-Type"))
		}
		for n := range p.Sheets["1"] {
			_, score := ask(t, "GET", fmt.Sprintf("%sapi/score?plan=%s&shot=1&page=%d", s.URL(), p.Key, n+1), nil, "")
			var page toldSheet
			if err := json.Unmarshal([]byte(score), &page); err != nil {
				t.Fatal(err)
			}
			checkElements(t, page.SVG)
		}
	}
}

// checkElements looks whether a drawing holds only what drawings are made of.
func checkElements(t *testing.T, doc string) {
	t.Helper()
	dec := xml.NewDecoder(strings.NewReader(doc))
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		el, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		switch el.Name.Local {
		case "svg", "title", "desc", "g", "line", "rect", "circle", "path", "text", "a":
		default:
			t.Errorf("a name made an element %s", el.Name.Local)
		}
		for _, a := range el.Attr {
			within := el.Name.Local == "a" && strings.HasPrefix(a.Value, "#") // as a drawing leads from flag to sentence
			if strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "href" && !within || a.Name.Local == "style" {
				t.Errorf("a name made an attribute %s", a.Name.Local)
			}
		}
	}
}

func TestHostileNamesRunNothing(t *testing.T) {
	for what, src := range map[string]string{"names": hostilePlan, "errors": hostileErrors} {
		t.Run(what, func(t *testing.T) {
			d := &desk{TB: t, folder: t.TempDir()}
			d.save(hostileFile, hostilePlan)
			b := newTab(t, 1440, 900)
			b.open(d.serve(Options{}))
			b.until(sheetCount + ` > 0`)
			d.save(hostileFile, src)
			b.until(says("#list .plan-name", "<script>"))
			b.until(says("#list .shot-title", "<script>ran=1</script>"))
			b.until(says("#shot-name", "<style>*{display:none}</style>"))
			b.until(says(".sheet text", "&lt;b&gt;"))
			b.until(says("#findings .place", "onerror=ran=1"))
			if what == "errors" {
				b.until(says("#notice", "<script>"))
			}
			if value[bool](b, `"ran" in window`) {
				t.Error("a script ran")
			}
			if n := value[int](b, `document.querySelectorAll("script").length`); n != 1 {
				t.Errorf("the page has %d scripts", n)
			}
			if n := value[int](b, `document.querySelectorAll("img, iframe, style, base, a:not(.skip):not(.sheet a[href^='#']), input:not([type=range]):not([type=checkbox]):not([type=number]), [onload], [onerror]").length`); n != 0 {
				t.Errorf("names made %d elements", n)
			}
			if turned := value[bool](b, `/[\u202a-\u202e\u2066-\u2069]/.test(document.body.textContent)`); turned {
				t.Error("marks on the page turn what is beside them")
			}
			if title := value[string](b, `document.title`); strings.Contains(title, "\u202e") {
				t.Errorf("the title %q turns what is beside it", title)
			}
			b.picture("page")
		})
	}
}

// The policy is there for the day on which something above fails.
func TestThePolicyStopsScripts(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "lantern.pull"))
	b := newTab(t, 800, 600)
	b.except = []string{"Content Security Policy", "status of 404"}
	b.open(s)
	value[any](b, `(() => {
		const el = document.createElement("div");
		el.innerHTML = "<img src=x onerror='window.ran=1'><svg onload='window.ran=1'></svg><iframe srcdoc='<script>parent.ran=1</script>'></iframe>";
		const script = document.createElement("script");
		script.textContent = "window.ran=1";
		const remote = document.createElement("script");
		remote.src = "http://127.0.0.1:9/x.js";
		document.body.append(el, script, remote);
	})() ?? 0`)
	value[any](b, `new Promise((done) => setTimeout(() => done(0), 200))`)
	if value[bool](b, `"ran" in window`) {
		t.Error("an inline script ran")
	}
}
