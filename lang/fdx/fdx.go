// Package fdx reads script pages in the XML form of script programs (.fdx; there is
// no published schema: rules from real files of versions 2, 3 and 5, and from public
// readers and writers; marks of revisions as public readers' tests have them). It
// gives the elements of fountain, so that both forms come to the same.
//
// Of a file it reads the paragraphs of Content, the list of Revisions and the first
// line of the TitlePage, and nothing else.
package fdx

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"iter"
	"strconv"
	"strings"

	"pullscore/lang"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
)

// Is reports whether a text is XML, which may be a script page.
func Is(t *lines.Text) bool {
	head := strings.TrimSpace(t.Content[:min(len(t.Content), 256)])
	return strings.HasPrefix(head, "<?xml") || strings.HasPrefix(head, "<FinalDraft")
}

// Beats yields the beats of a page with their scenes, as fountain.Beats does. Lines
// are those of the file. What is wrong is added to faults.
func Beats(t *lines.Text, faults *lines.Faults) iter.Seq2[fountain.Scene, fountain.Beat] {
	return fountain.Assemble(t, elements(t, faults), faults)
}

// elements yields the elements of a page.
func elements(t *lines.Text, faults *lines.Faults) iter.Seq[fountain.Element] {
	return func(yield func(fountain.Element) bool) {
		r := &reader{tokens: newTokens(t), faults: faults, yield: yield, revisions: byNumber(Revisions(t).Sets)}
		if err := r.document(); err != nil && !errors.Is(err, errStopped) {
			r.tell(err)
		}
	}
}

// errStopped ends the reading when no more is wanted.
var errStopped = errors.New("no more is wanted")

// tell adds a mistake of the XML at its place.
func (r *reader) tell(err error) {
	message, at := "this is no whole XML", r.tokens.began
	var syntax *xml.SyntaxError
	open := r.tokens.open
	switch {
	case errors.Is(err, errDeep):
		message = err.Error()
	case len(open) > 0 && r.tokens.atEnd(err):
		message, at = fmt.Sprintf("this XML ends within <%s>", open[len(open)-1]), len(r.tokens.text.Content)
	case errors.As(err, &syntax):
		message += ": " + syntax.Msg
	}
	r.faults.Add(lang.Diagnostic{
		Code: "bad-xml", Severity: lang.Error, Message: message, Range: r.tokens.text.Place(at),
		Detail: "What stands behind this place is not read. Write the page once more from the script program.",
	})
}

// A reader reads the document.
type reader struct {
	tokens    *tokens
	faults    *lines.Faults
	yield     func(fountain.Element) bool
	revisions map[int]string
	omitted   bool // the scene is
}

const root = "FinalDraft"

// document reads the outermost element.
func (r *reader) document() error {
	top, err := r.tokens.child()
	if err != nil {
		if errors.Is(err, io.EOF) {
			err = nil
			r.notAScript(r.tokens.text.Start())
		}
		return err
	}
	if top.Name.Local != root {
		r.notAScript(r.tokens.text.Place(r.tokens.began))
		return nil
	}
	if kind := attribute(top, "DocumentType"); kind != "" && kind != "Script" {
		r.faults.Add(lang.Diagnostic{
			Code: "not-a-script", Severity: lang.Warning, Range: r.tokens.text.Place(r.tokens.began),
			Message: fmt.Sprintf("DocumentType is %s, and Script is read", kind),
			Detail:  "What is in it is taken as a script all the same.",
		})
	}
	if err := r.each(func(e xml.StartElement) error {
		if e.Name.Local == "Content" {
			return r.each(r.paragraph)
		}
		return r.tokens.skip()
	}); err != nil {
		return err
	}
	_, err = r.tokens.child() // behind the end
	if errors.Is(err, io.EOF) {
		return nil
	}
	return err
}

func (r *reader) notAScript(at lang.Range) {
	r.faults.Add(lang.Diagnostic{
		Code: "not-a-script", Severity: lang.Error, Message: "this XML has no " + root + " at its top", Range: at,
		Detail: "A script page in XML begins with it. Write the page as FDX or Fountain from the script program.",
	})
}

// each reads the children of the element that is open, up to its end.
func (r *reader) each(read func(xml.StartElement) error) error {
	for depth := len(r.tokens.open); ; {
		e, err := r.tokens.child()
		if err != nil || len(r.tokens.open) < depth {
			return err
		}
		if err := read(e); err != nil {
			return err
		}
	}
}

// attribute returns an attribute without the blanks around it.
func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return strings.TrimSpace(a.Value)
		}
	}
	return ""
}

// number returns an attribute that is a number; 0 where it is none.
func number(e xml.StartElement, name string) int {
	n, err := strconv.Atoi(attribute(e, name))
	if err != nil || n < 0 {
		return 0
	}
	return n
}
