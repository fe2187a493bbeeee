// What can be written at a place, best first.
//
// What may stand there is what the grammar expects (lang.At); there is no second table.
// For each thing that it expects, offers.go says what the plan has of that kind, and
// habits.go which of them comes first: what this plan writes most at such a place, then
// what is usual.

package editor

import (
	"context"
	"fmt"
	"strings"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// completionTriggers start completion by themselves.
var completionTriggers = []string{" ", "\"", ",", "/", "0", "1", "2", "3", "4", "5", "6", "7", "8", "9"}

// An offer is one thing that can be written.
type offer struct {
	label  string
	insert string // if it is not the label
	behind string // what stands behind the cursor once it is written
	detail string
	kind   int
}

// completion answers with what can be written at a place.
func completion(ctx context.Context, s *snapshot, p *lsp.CompletionParams) (any, error) {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	list := lsp.CompletionList{Items: []lsp.CompletionItem{}}
	if !d.plan {
		return list, nil
	}
	w := s.writer(ctx, d, s.offset(d, p.Position))
	if p.Context != nil && !w.wanted(p.Context.TriggerCharacter) {
		return list, nil
	}
	seen := map[string]bool{}
	for _, o := range w.offers() {
		if !seen[o.label] {
			seen[o.label] = true
			list.Items = append(list.Items, w.item(o, len(list.Items)))
		}
	}
	return list, nil
}

// wanted reports whether a character that was typed is a reason to offer something. A blank
// at the start of a line, and a text that somebody says, are none.
func (w *writer) wanted(typed string) bool {
	switch typed {
	case " ":
		return w.at.Before != ""
	case `"`:
		return w.at.Quoted
	}
	return true
}

// item returns an offer as the protocol has it.
func (w *writer) item(o offer, place int) lsp.CompletionItem {
	from, insert := w.at.From, o.insert
	if insert == "" {
		insert = o.label
	}
	if w.at.Quoted {
		from += len(w.quote())
		if o.insert == "" {
			insert += w.unclosed()
		}
	}
	it := lsp.CompletionItem{
		Label: o.label, Kind: o.kind, Detail: o.detail, SortText: fmt.Sprintf("%03d", place),
		TextEdit: &lsp.TextEdit{Range: w.s.ranged(w.doc, from, w.offset), NewText: insert + o.behind},
	}
	if o.behind != "" && w.s.client.TextDocument.Completion.CompletionItem.SnippetSupport {
		it.TextEdit.NewText = escapeSnippet(insert) + "$1" + escapeSnippet(o.behind)
		it.InsertTextFormat = lsp.InsertSnippet
	}
	return it
}

// escapeSnippet writes text that means itself in a snippet.
func escapeSnippet(text string) string {
	return strings.NewReplacer(`\`, `\\`, "$", `\$`, "}", `\}`).Replace(text)
}

// quote returns the opening quote of the text that is being written.
func (w *writer) quote() string {
	if strings.HasPrefix(string(w.doc.data[w.at.From:]), "“") {
		return "“"
	}
	return `"`
}

// unclosed returns the closing quote of the text that is being written, if the line has
// none behind the cursor.
func (w *writer) unclosed() string {
	closing := map[string]string{`"`: `"`, "“": "”"}[w.quote()]
	rest, _, _ := strings.Cut(string(w.doc.data[w.offset:]), "\n")
	if strings.HasPrefix(rest, closing) || strings.Count(rest, closing)%2 == 1 {
		return ""
	}
	return closing
}

// A writer is a place at which somebody writes, with all that can be offered there.
type writer struct {
	ctx     context.Context
	s       *snapshot
	doc     *document
	offset  int
	start   int // of the statement
	at      lang.Writing
	tree    *lang.File
	section *lang.Section    // that the place is in; nil at the top of a file
	above   []lang.Statement // of the section, the header included
	plan    *planned         // nil for a text that nobody can interpret
}

// writer returns the place at a byte of a document.
func (s *snapshot) writer(ctx context.Context, d *document, offset int) *writer {
	w := &writer{ctx: ctx, s: s, doc: d, offset: offset, at: writingAt(d.data, offset), tree: d.tree()}
	body := w.tree.Body
	for _, section := range w.tree.Sections {
		if section.Head.Range().Start.Offset < w.at.From {
			w.section, body = section, append([]lang.Statement{section.Head}, section.Body...)
		}
	}
	for _, one := range body {
		if one.Range().Start.Offset < w.at.From {
			w.above = append(w.above, one)
		}
	}
	w.start = w.at.From
	if n := len(w.above); n > 0 && w.at.Before != "" {
		w.start = w.above[n-1].Range().Start.Offset
		w.above = w.above[:n-1]
	}
	w.plan, _ = s.plan(ctx, d.uri)
	return w
}

// writingAt returns what is written at a byte. A stop that has begun, such as f/ or f/2, is
// no word to the grammar yet: what can be written is then what can be in its place.
func writingAt(data []byte, offset int) lang.Writing {
	start := offset
	for start > 0 && strings.IndexByte("0123456789./fT", data[start-1]) >= 0 {
		start--
	}
	if begun := string(data[start:offset]); strings.HasPrefix(begun, "f/") || strings.HasPrefix(begun, "T") {
		at := lang.At(data, start)
		if at.Statement == "with" && at.From == start && (at.Clause == "stop" || at.Clause == "meter") {
			return at
		}
	}
	return lang.At(data, offset)
}
