package fdx

import (
	"encoding/xml"
	"fmt"
	"math/rand"
	"strings"
	"testing"

	"pullscore/lang/fountain"
	"pullscore/lang/testing/samples"
)

// run returns the tokens of a text with their places, and the mistake at its end. alone
// has all of them read by the decoder of the standard library.
func run(src string, alone bool) (list []string, quick int) {
	t := newTokens(decode("f.fdx", src))
	t.only = t.only || alone
	for len(list) < 100_000 {
		k, err := t.next()
		if t.decoder == nil {
			quick++
		}
		where := fmt.Sprintf("%d %d %q ", t.began, t.line(), t.open)
		if err != nil {
			if syntax, ok := err.(*xml.SyntaxError); ok {
				return append(list, where+syntax.Msg+fmt.Sprint(t.atEnd(err))), quick
			}
			return append(list, where+err.Error()+fmt.Sprint(t.atEnd(err))), quick
		}
		list = append(list, fmt.Sprintf("%s%d %q %q %q", where, k.kind, k.element.Name, k.element.Attr, k.text[:min(len(k.text), fountain.MaxSpeech)]))
	}
	return list, quick
}

// compareRuns compares what is read quickly with what the decoder reads.
func compareRuns(t *testing.T, src string) (quick int) {
	t.Helper()
	got, quick := run(src, false)
	want, _ := run(src, true)
	for i := range min(len(got), len(want)) {
		if got[i] != want[i] {
			t.Fatalf("%q: token %d is %s, want %s", src, i, got[i], want[i])
		}
	}
	if len(got) != len(want) {
		t.Fatalf("%q: %d tokens, want %d", src, len(got), len(want))
	}
	return quick
}

// Real pages are read quickly but for their first lines.
func TestQuickSamples(t *testing.T) {
	samples.EachCut(t, "fdx/", func(t *testing.T, name string, src []byte, _ any) {
		text := decode(name, string(src)).Content
		all, _ := run(text, true)
		if quick := compareRuns(t, text); quick < len(all)*9/10 {
			t.Errorf("%d of %d tokens are read quickly", quick, len(all))
		}
	})
}

// Any XML, whole or not, has the same tokens either way.
func TestQuick(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	pieces := []string{
		"<", ">", "/>", "</", "<a>", "</a>", "<b>", "</b>", "<a/>", "<b c='1'>", `<b c="&amp;" d = '"'>`, "<é>", "</é>", "<n:a>", "</n:a>", "<a xmlns='x'>", "<a n:c='1'>",
		" ", "\n", "\r", "\t", "x", "Ærø", "&lt;", "&#233;", "&#xe9;", "&#0;", "&#10;", "&#xFFFF;", "&#99999999;", "&e;", "&", ";", "]]>", "]]", "\x01", "\ufffd", "\uffff", "\ufeff", "\U00010400",
		"<!-- c -->", "<!", "<![CDATA[ <a> ]]>", "<?p q?>", "<!DOCTYPE a>", "=", "'", `"`, "c", ":", "-", "9", "<a c>", "<a c=1>", "<a c='1'd='2'>", "<a 9='1'>", "<a\nc\n=\n'1'\n>", "</a >", "</ab>",
	}
	whole, quick := 0, 0
	for n := range 8000 {
		var src strings.Builder
		src.WriteString([]string{"<a>", "<?xml version=\"1.0\" encoding='x'?>\n<a b='1'>", "<a xmlns='y'>", "<n:a>", "<a/>", ""}[min(5, r.Intn(24)/4)])
		depth := 1
		for range r.Intn(12) {
			switch r.Intn(5) {
			case 0:
				src.WriteString(pieces[r.Intn(len(pieces))])
			case 1:
				src.WriteString("<a c='" + pieces[r.Intn(len(pieces))] + "'>")
				depth++
			case 2:
				if depth > 1 {
					src.WriteString("</a>")
					depth--
				}
			default:
				src.WriteString([]string{"x", " &amp; ", "\n", "<b/>", "<a>y</a>"}[r.Intn(5)])
			}
		}
		if n%3 > 0 {
			src.WriteString(strings.Repeat("</a>", depth))
			whole++
		}
		quick += compareRuns(t, src.String())
	}
	if quick < whole {
		t.Errorf("%d tokens of %d texts are read quickly", quick, whole)
	}
}
