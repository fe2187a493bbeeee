package screenplay

import (
	"strings"
	"testing"

	"pullscore/lang"
	"pullscore/lang/lines"
)

// Both forms of one page come to the same.
func TestForms(t *testing.T) {
	const fdx = `<?xml version="1.0"?><FinalDraft><Content><Paragraph Type="Character"><Text>ADA (O.S.)</Text></Paragraph>` +
		`<Paragraph Type="Dialogue"><Text>Aye.</Text></Paragraph></Content><TitlePage><Content><Paragraph><Text>FERRY</Text></Paragraph></Content></TitlePage></FinalDraft>`
	for _, src := range []string{"Title: _FERRY_\n\nADA (O.S.)\nAye.\n", fdx} {
		text, _ := lines.Decode("page", []byte(src))
		var faults lines.Faults
		said := ""
		for _, beat := range Beats(text, &faults) {
			if beat.Who != "" && beat.Off {
				said += beat.Who + ": " + beat.Text()
			}
		}
		if said != "ADA: Aye." || Title(text) != "FERRY" || len(faults.List()) > 0 {
			t.Errorf("%q %q %v", said, Title(text), faults.List())
		}
		if _, ok := Revisions(text); ok != strings.HasPrefix(src, "<") {
			t.Errorf("revisions: %v", ok)
		}
	}
}

// Files without lines are told, with what to do instead.
func TestClosed(t *testing.T) {
	for _, c := range []struct{ path, content, detail string }{
		{"a.fountain", "%PDF-1.7", "pdftotext -layout"}, {"a.txt", "\uFEFF\n%PDF-1.7", "pdftotext -layout"}, {"a.PDF", "", "pdftotext -layout"},
		{"a.celtx", "", "Write it as FDX or Fountain there."}, {"a.fadein", "x", "Write it as"}, {"a.Highland", "x", "Write it as"},
		{"a.fountain", "100 %PDF", ""}, {"a.fdx", "<FinalDraft/>", ""}, {"a", "", ""},
	} {
		d, ok := Closed(c.path, c.content)
		if ok != (c.detail != "") || ok && (d.Code != "pdf-script" || d.Severity != lang.Error || !strings.Contains(d.Detail, c.detail)) {
			t.Errorf("%s %q: %v %+v", c.path, c.content, ok, d)
		}
	}
}
