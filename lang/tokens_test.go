package lang

import (
	"fmt"
	"strings"
	"testing"
)

func TestTokens(t *testing.T) {
	const src = "subject mark at 1.7 m # near\nlens nd\n  mark 5' at 4 o'clock\n\nshot 2-stop \"T\\\"2\"\n" +
		"  with stop f/2.8, lens nd\n  rack to mark,\n    on stop + 2 fr\n  rack to A, with pan\n  mark: “x”\n  § stop\n"
	var b strings.Builder
	for _, token := range Tokens([]byte(src)) {
		fmt.Fprintf(&b, "%s %s\n", token.Kind, src[token.Start:token.End])
	}
	const want = `keyword subject
name mark
keyword at
number 1.7
keyword m
comment # near
keyword lens
name nd
keyword mark
number 5'
keyword at
number 4 o'clock
keyword shot
name 2-stop
text "T\"2"
keyword with
keyword stop
number f/2.8
sign ,
keyword lens
name nd
keyword rack
keyword to
name mark
sign ,
keyword on
name stop
sign +
number 2
keyword fr
keyword rack
keyword to
name A
sign ,
keyword with
keyword pan
name mark
sign :
text “x”
unknown §
keyword stop
`
	if b.String() != want {
		t.Errorf("got\n%swant\n%s", b.String(), want)
	}
}
