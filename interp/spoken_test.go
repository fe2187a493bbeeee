package interp_test

import (
	"slices"
	"testing"

	"pullscore/interp"
)

// Words need neither a lens nor a time: a plan that is only words yet is
// compared with a page as any other, and its pulls are told of once it has them.
func TestWordsOfShotsThatCannotBeBuilt(t *testing.T) {
	const body = "subject NORA at 2 m\nvoice OTTO\nmove asks(WHO)\n  WHO: \"Where is it?\"\n\nshot 1\n  asks(NORA)\n  OTTO: \"Under the bell.\"\n  NORA: \"Then fetch it.\"\nshot 2\n  OTTO: \"It is wet.\"\n"
	const page = "INT. A #1#\n\nNORA\nWhere is it?\n\nOTTO\nUnder the lamp.\n\nNORA\nThen fetch it.\n\nOTTO\nIt is wet.\n"
	for name, c := range map[string]struct{ plan, page string }{
		"no kit": {"plan \"A\"\n" + body, page},
		"a line without a time": {
			"plan \"A\"\nuse \"kit.pull\"\nwith camera A, lens \"75\", stop f/4\n" + body + "  NORA: \"And dry it.\", on nothing + 1 s\n",
			page + "\nNORA\nAnd dry it.\n",
		},
	} {
		res := interp.Interpret("plan.pull", []byte(c.plan), interp.Options{
			ReadFile: func(string) ([]byte, error) { return []byte(kitText), nil },
			Script:   &interp.Script{Path: "page.fountain", Text: []byte(c.page)},
		})
		if len(res.Revision) != 1 || res.Revision[0].PageText != "Under the lamp." || res.Revision[0].Shot != "1" {
			t.Errorf("%s: %+v", name, res.Revision)
		}
		if !slices.Contains(codes(res), "line-changed") {
			t.Errorf("%s: %v", name, res.Findings)
		}
	}
}
