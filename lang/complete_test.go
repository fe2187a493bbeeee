package lang

import (
	"slices"
	"strings"
	"testing"
)

func TestChoices(t *testing.T) {
	tests := []struct {
		src        string
		want, lack string // words, or what a value is, behind one another with |
	}{
		{"", "plan|rate|subject|camera|shot", "rack|focal|moves"},
		{"pla", "plan|pace", "rack"},
		{"camera A\n  ", "sensor|iso|rate|lens", "rack|focal"},
		{"shot 1\n", "rack|hold|with|a name", "plan|sensor"},
		{"camera A\nrate 24\n", "plan", "sensor"},
		{"shot 1\n  rack ", "to", "on|from"},
		{"shot 1\n  rack to ", "a name, a distance or inf", "on"},
		{"shot 1\n  rack to NORA", "a name, a distance or inf", ""},
		{"shot 1\n  rack to NORA ", "on|at|landing|over|smooth|because|and", "lasting"},
		{"shot 1\n  rack to NORA, over 1 s, ", "on|landing|smooth", "over"},
		{"shot 1\n  rack to NORA, over 1 s,\n    ", "on|landing|smooth", "over|pause"},
		{"shot 1\n  rack to NORA, at 2 s, ", "over", "on|at"},
		{"shot 1\n  rack to NORA, over 1 ", "s|ms|fr|smooth", "m|deg|over"},
		{"shot 1\n  rack to NORA, over 1", "s|ms|fr", "m"},
		{"shot 1\n  rack to NORA, over 1 f", "s|ms|fr", "m"},
		{"shot 1\n  rack to NORA, landing ", "on|at", "over"},
		{"shot 1\n  rack to NORA, landing on ", aMoment + "", "over"},
		{"shot 1\n  rack to NORA, landing on end ", "of", "over"},
		{"shot 1\n  rack to NORA, because ", "a text in quotes", "over"},
		{"shot 1\n  NORA ", ":|(|moves", "to"},
		{"shot 1\n  NORA moves ", "to", "over"},
		{"shot 1\n  NORA moves to 2 m", "cm|m|ft", "s"},
		{"shot 1\n  NORA moves to 2 m ", "over|on|smooth", "s"},
		{"shot 1\n  NORA: ", "a text in quotes", "on"},
		{"shot ", "the shot's ID, such as 14B", "on"},
		{"units ", "metric|imperial", "plan"},
		{"camera A\n on ", "tripod|dolly|shoulder|hand", "iso"},
		{"lens A\n ring ", "an angle, such as 90 deg|by|none|diameter|girth|linear", "over"},
		{"with lens \"75\" ", "camera|stop|puller", "lens|plan"},
		{"subject A at 4 ft 6 ", "in|m", "s"},
		{"subject A at 4' 6 1/2 ", "in|m", "s"},
		{"subject A at 4 ft 6 in ", "left|right|deep", "s"},
		{"dolly in 4 ft 6 in ", "", "left"},
		{"lens A\n mark 1 m at ", "an angle, a length along the rim, a part of the throw or a clock position", "and|deg"},
		{"lens A\n mark 1 m at 3 ", "of|deg|in|%|o'clock|and", "s|px"},
		{"lens A\n mark 1 m at 3.2 of 10 ", "and", "of"},
		{"lens A\n mark ", "closest", "at"},
		{"lens A\n play 3 deg, marked ", "to|both", "marked|inf"},
		{"lens A\n marks ", "engraved|measured", "within"},
		{"camera A\n sensor 2/3 in ", "type|x", "crop"},
		{"camera A\n sensor super35 ", "its perforations, such as 3-perf|crop", "x"},
		{"with travel 330 deg ", "from|diopter|tube|shoots", "travel|to"},
		{"shot 1\n dolly in 4 ft 6 in ", "over|at", "left"},
		{"let BOTH = NORA ", "and", "over"},
		{"shot 1\n", "pan|tilt|boom|track|push|pull|dolly", ""},
		{"shot 1\n pan ", "left|right|to|with|and", "up|down|over"},
		{"shot 1\n tilt ", "up|down|to|with", "left|right|and|over"},
		{"shot 1\n pan and ", "tilt", "to"},
		{"shot 1\n pan and tilt ", "to|with", "left|up"},
		{"shot 1\n pan left 10 ", "deg|turn|over|with", "m|s|until"},
		{"shot 1\n pan to PAUL, ", "over|with|on|landing|smooth", "until|to"},
		{"shot 1\n pan to PAUL, with ", "pan|tilt|boom|dolly|track|camera|zoom", "over|lens"},
		{"shot 1\n pan to PAUL, with boom, ", "", "over|on|landing|smooth|until"},
		{"shot 1\n pan with PAUL ", "on|at|until", "over|with|landing|smooth"},
		{"shot 1\n rack to PAUL, with pan, ", "because", "over|on|landing|smooth"},
		{"shot 1\n rack to PAUL, over 1 s, ", "because|on", "with"},
		{"shot 1\n boom ", "up|down", "left|over"},
		{"shot 1\n track ", "left|right", "up|over"},
		{"shot 1\n push ", "in", "out|over"},
		{"shot 1\n pull ", "out", "in|over"},
		{"shot 1\n track left 1 ", "m|over|with", "deg"},
		{"shot 1\n with camera A, ", "operator|puller", ""},
		{"wombat wombat ", "", "plan|rack"},
	}
	for _, test := range tests {
		got := Choices([]byte(test.src), len(test.src))
		has := func(what string) bool {
			return slices.ContainsFunc(got, func(c Choice) bool { return c.Word == what || c.Word == "" && c.Text == what })
		}
		for _, want := range strings.Split(test.want, "|") {
			if want != "" && !has(want) {
				t.Errorf("%q: %q is not among %v", test.src, want, got)
			}
		}
		for _, lack := range strings.Split(test.lack, "|") {
			if lack != "" && has(lack) {
				t.Errorf("%q: %q is among %v", test.src, lack, got)
			}
		}
	}
}

// Of every plan, each word is among the choices at its place, and so is the unit
// behind each number.
func TestChoicesHaveWhatIsWritten(t *testing.T) {
	asked := 0
	for _, in := range inputs {
		if strings.Contains(in.name, "without blanks") {
			continue
		}
		src := Format([]byte(in.src))
		s := newScanner("", string(src))
		for tok := s.scan(); tok.Type != 0 && !tok.EOF(); tok = s.scan() {
			if tok.Type != tokWord || !isKeyword(tok.Value) || tok.Value == "df" || tok.Value == "inf" {
				continue
			}
			got := Choices(src, tok.Pos.Offset)
			asked++
			if !slices.ContainsFunc(got, func(c Choice) bool { return c.Word == tok.Value || strings.HasPrefix(c.Word, tok.Value+"/") }) && !perSecondOf(src, tok.Pos.Offset) {
				t.Errorf("%s: %q at %v is not among %v", in.name, tok.Value, tok.Pos, got)
			}
		}
	}
	if asked < 200 {
		t.Errorf("only %d words", asked)
	}
}

// perSecondOf reports whether the word at an offset is the s of deg/s.
func perSecondOf(src []byte, offset int) bool { return src[offset] == 's' && src[offset-1] == '/' }

func TestWords(t *testing.T) {
	for role, want := range map[Role]string{
		RoleStatement: "rack subject keeps loses on", RoleClause: "over landing on lens deep from until", RoleWord: "to and screen metric tripod x diagonal end left wire",
		RoleUnit: "m deg/s %",
	} {
		list := Words(role)
		for _, w := range strings.Fields(want) {
			if !slices.Contains(list, w) {
				t.Errorf("%v: %s is not among %q", role, w, list)
			}
		}
	}
	if list := Words(RoleWord); slices.Contains(list, "subject") || slices.Contains(list, "keeps") {
		t.Errorf("words within statements: %q", list)
	}
}

// Soft words are names wherever names stand.
func TestSoftWordsAreNames(t *testing.T) {
	for i, a := range softWords {
		for k, b := range softWords {
			if a == b || (i < k) != ((i+k)%2 == 0) { // each pair in one order or the other
				continue
			}
			src := strings.NewReplacer("A", a, "B", b).Replace(`let A = 2 m
subject A at 2 m, A * 2 left, deep B
subject B at A - 35 cm
voice A
with camera A, lens B, puller A
camera A
puller B
lens A
move A(A, B)
  rack to A, on B
shot 1
  start on A and B
  A: "b", on end of B + A
  A(A, B)
  B(A)
  A moves to B, A * 2 left over B
  B moves to A over 2 * B, on A
  cue A on B "b" - A
  follow A until B
  rack to A + B, at A, over B
  zoom to A over B
  pause A
scene
  mark A at B
  mark B at A right, 2 m upstage
  subject A at B, 2 m towards B, eyes A
  line A to B
  A: "b", to B, off
  A moves to B over A, eyes B
  B moves to A left, 2 m up over 2 s, on A
shot 2
  covers A to B + 1 s
  places as at A
  camera at A, 2 m left, aims at A and B, A right
  measured A at B A
  camera moves to A over B
  rack to A, with camera
`)
			if _, diags := Parse("", []byte(src)); len(diags) > 0 {
				t.Errorf("%s, %s: line %d: %s\n%s", a, b, diags[0].Range.Start.Line, diags[0].Message, Quote(diags[0], []byte(src)))
			}
		}
		if slices.Contains(Keywords(), a) {
			t.Errorf("%s is a keyword", a)
		}
	}
}

func TestAt(t *testing.T) {
	for _, test := range []struct {
		src, from, statement, clause, before string
		quoted                               bool
	}{
		{"", "", "", "", "", false},
		{"pla", "pla", "", "", "", false},
		{"use \"ki", `"ki`, "use", "", "use", true},
		{"use \"kit.pull\"", "", "use", "", `"kit.pull"`, false},
		{"shot 1\n  rack to ", "", "rack", "", "to", false},
		{"shot 1\n  rack to NO", "NO", "rack", "", "to", false},
		{"shot 1\n  rack to NORA, landing on \"", `"`, "rack", "landing", "on", true},
		{"shot 1\n  rack to NORA, landing on “ket", "“ket", "rack", "landing", "on", true},
		{"shot 1\n  rack to NORA, landing on \"kettle\",\n  over 1 ", "", "rack", "over", "1", false},
		{"shot 1\n  NORA: \"Who is", `"Who is`, ":", "", ":", true},
		{"shot 1\n  hold 1 s # a \"comm", "", "", "", "", false},
		{"shot 1\n  cue \"é\\\"x", `"é\"x`, "cue", "", "cue", true},
		{"with camera A, lens ", "", "with", "lens", "lens", false},
	} {
		got := At([]byte(test.src), len(test.src))
		if got.From != len(test.src)-len(test.from) || got.Quoted != test.quoted || got.Statement != test.statement ||
			got.Clause != test.clause || got.Before != test.before {
			t.Errorf("%q: %q %+v", test.src, test.src[got.From:], got)
		}
	}
}
