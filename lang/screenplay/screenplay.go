// Package screenplay reads script pages, whatever form they are in: Fountain, or the XML
// of script programs.
package screenplay

import (
	"iter"
	"path/filepath"
	"strings"

	"pullscore/lang"
	"pullscore/lang/fdx"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
)

// Beats yields the beats of a page with their scenes, as fountain.Beats does.
func Beats(t *lines.Text, faults *lines.Faults) iter.Seq2[fountain.Scene, fountain.Beat] {
	if fdx.Is(t) {
		return fdx.Beats(t, faults)
	}
	return fountain.Beats(t, faults)
}

// Title returns what a page is called; empty where it does not say so.
func Title(t *lines.Text) string {
	if fdx.Is(t) {
		return fdx.Title(t)
	}
	for _, f := range fountain.TitlePage(t) {
		if strings.EqualFold(f.Key, "Title") {
			return fountain.Plain(f.Value)
		}
	}
	return ""
}

// Revisions returns the sets of revisions of a page; ok is false for a form that
// has none.
func Revisions(t *lines.Text) (h fdx.History, ok bool) {
	if fdx.Is(t) {
		return fdx.Revisions(t), true
	}
	return h, false
}

// Closed returns what is told of a file that holds no lines of a script which
// Pullscore reads; ok is false for others. A PDF is known by its beginning, other
// files of script programs by their ending.
func Closed(path, content string) (d lang.Diagnostic, ok bool) {
	d = lang.Diagnostic{Code: "pdf-script", Severity: lang.Error}
	ending := strings.ToLower(filepath.Ext(path))
	switch {
	case ending == ".pdf", strings.HasPrefix(strings.TrimLeft(content[:min(len(content), 64)], "\uFEFF \t\r\n"), "%PDF-"):
		d.Message = "a PDF has places of letters and no lines of a script"
		d.Detail = "Ask for the page as FDX or Fountain, which every script program writes. " +
			"Else pdftotext -layout page.pdf page.txt, and mark it up as Fountain by hand."
	case ending == ".fadein" || ending == ".celtx" || ending == ".highland":
		d.Message = "a file of a script program is no page that can be read"
		d.Detail = "Write it as FDX or Fountain there."
	default:
		return d, false
	}
	return d, true
}
