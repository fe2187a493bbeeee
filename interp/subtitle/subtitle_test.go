package subtitle

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"
)

// said writes what is said, with / before each new turn and by whom.
func said(c *Cleaner, text string) string {
	s, turns := c.Said(text)
	for i := len(turns) - 1; i >= 0; i-- {
		s = fmt.Sprintf("%s/%d %s", s[:turns[i].At], turns[i].By, s[turns[i].At:])
	}
	return strings.Join(strings.Fields(s), " ")
}

// Only what is said stays, and who says it is known.
func TestSaid(t *testing.T) {
	c := New([]string{"ADA", "MRS. DALE", "OLD MARTA"})
	for range 3 {
		c.Learn("Keeper: who is there?")
	}
	c.Learn("Listen: they come, and nobody says what they want.")
	for text, want := range map[string]string{
		"Who is\nthere?":                        "Who is there?",
		"- Who is there?\n- Nobody.":            "/0 Who is there? /0 Nobody.",
		"–Who?\n—Me.":                           "/0 Who? /0 Me.",
		">> Who?\n>>> ADA: Me.":                 "/0 Who? /1 Me.",
		"ADA: Who?":                             "/1 Who?",
		"Ada: Who?":                             "/1 Who?",
		"- Mrs. Dale: Who?":                     "/2 Who?",
		"Dale: Who?":                            "/2 Who?",
		"MARTA (O.S.): Who?":                    "/3 Who?",
		"(softly) ADA: Who?":                    "/1 Who?",
		"[ADA] Who?":                            "/1 Who?",
		"(Ada)\nWho?":                           "/1 Who?",
		"[thunder] Who?":                        "Who?",
		"YOUNG MAN: Who?":                       "/-1 Who?",
		"Keeper: Who?":                          "/-1 Who?",
		"Listen: they come":                     "Listen: they come",
		"I tell you: no":                        "I tell you: no",
		"At 7:30":                               "At 7:30",
		"I (whispering) go [a door\nslams] now": "I go now",
		"(he (still) coughs) Go":                "Go",
		"Go (now":                               "Go now",
		"Go now) or [never":                     "Go now or never",
		"♪ Row the boat ♪\n# to the wreck #":    "Row the boat to the wreck",
		`{\an8}Go`:                              "Go",
		"（物音）行く":                                "行く",
		"[rain]":                                "",
		"ADA: (coughs)\n- No [a bell]":          "/1 /0 No",
		"twenty-five men -- all of them — gone…": "twenty-five men -- all of them — gone…",
		"THIS IS ALL I SAY: no":                  "THIS IS ALL I SAY: no",
	} {
		if got := said(c, text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// In a file that is all in upper case only known names are labels.
func TestShouted(t *testing.T) {
	c := New([]string{"ADA"})
	c.Learn("LISTEN: THEY COME")
	for text, want := range map[string]string{"LISTEN: THEY COME": "LISTEN: THEY COME", "ADA: COME": "/1 COME"} {
		if got := said(c, text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// Any text can be cleaned, no bracket stays, and turns lie in what is said in their order.
func FuzzSaid(f *testing.F) {
	for _, seed := range []string{"- ADA (O.S.): (x [y) z]\n>>[ada]\n{a}♪b#", "((((", "))[(]:", "cafe\u0301: [é] -", "A: B: C:\n--"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if !utf8.ValidString(text) {
			return
		}
		c := New([]string{"ADA", "MRS. DALE", ""})
		c.Learn(text)
		s, turns := c.Said(text)
		if !utf8.ValidString(s) || strings.ContainsAny(s, "[](){}") {
			t.Fatalf("%q", s)
		}
		at := 0
		for _, turn := range turns {
			if turn.At < at || turn.At > len(s) || turn.By < Stranger || int(turn.By) > 3 {
				t.Fatalf("%+v in %q", turns, s)
			}
			at = turn.At
		}
	})
}
