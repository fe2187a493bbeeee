// Shots made by hand, as an interpreter would make them, for the tests of the
// drawings.

package plans

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/optics/ring"
)

// A Maker builds a shot step by step. The figures of landing are plausible
// and not computed: drawings draw what they are given.
type Maker struct{ *plan.Shot }

// New starts a shot with a lens of 75 mm at f/2.8 that is watched on a
// screen 12 m wide from 18 m.
func New(id, title string, duration float64) Maker {
	law, err := ring.FromMarks([]ring.Mark{{Distance: 0.75, Angle: 0}, {Distance: 1, Angle: 118}, {Distance: 2, Angle: 240}, {Distance: 5, Angle: 290}, {Distance: math.Inf(1), Angle: 310}}, ring.Shape{Focal: 0.075, Throw: 310})
	if err != nil {
		panic(err)
	}
	const criterion = 21.7e-6
	return Maker{&plan.Shot{
		ID: id, Title: title, Camera: "A", Lens: "75", Support: "tripod", Gear: 1,
		Duration: plan.Number(duration), Wanted: 0.9, Quickest: 0.2,
		Screen: &plan.Screen{Width: 12, Viewer: 18},
		Stop:   "f/2.8", FocalMM: 75, FNumber: 2.8, TNumber: plan.None(), CriterionMM: criterion * 1000,
		PlanName: "Harbour office",
		Optics: plan.Optics{
			SensorW: 24.89e-3, SensorH: 18.66e-3, Focal: plan.Still(0.075), Number: 2.8, Pupil: 1,
			Criterion: criterion, ArcminPerBlur: 2 / criterion, Ring: law, Marked: true,
			Diameter: 0.11, Breathes: math.NaN(), Camera: plan.Still(0),
		},
	}}
}

// Put adds a subject at a tape distance in metres.
func (m Maker) Put(name string, distance, deep float64) Maker {
	u := &plan.Subject{Name: name, Distance: plan.Number(distance), Deep: plan.Number(deep),
		Along: plan.Still(distance), Across: plan.Still(0), RingDeg: plan.None(), Slant: plan.None(), Sways: plan.None()}
	if x := m.FromTape(distance, 0); m.Optics.Ring != nil && !math.IsNaN(x) {
		deg := m.RingDeg(x, 0)
		u.RingDeg = plan.Number(deg)
	}
	m.Subjects = append(m.Subjects, u)
	return m
}

// Start puts the focus on a subject.
func (m Maker) Start(name string) Maker {
	u := m.Subject(name)
	m.Optics.Start = plan.Target{Name: name, Text: name, Distance: m.LensDistanceAt(u, 0)}
	return m
}

// Line adds a spoken line with its words spread over its time by their length.
// A word after a * is one that a move hangs on.
func (m Maker) Line(who, text string, start, end float64) Maker {
	l := plan.Line{Who: who, Text: strings.ReplaceAll(text, "*", ""), Start: plan.Number(start), End: plan.Number(end), Estimated: end-start > 1.5}
	at, per := start, (end-start)/float64(len([]rune(l.Text))+1)
	for _, w := range strings.Fields(text) {
		name, hangs := strings.CutPrefix(w, "*")
		next := at + per*float64(len([]rune(name))+1)
		l.Words = append(l.Words, plan.Word{Text: name, Start: at, End: next, Hangs: hangs})
		at = next
	}
	m.Lines = append(m.Lines, l)
	return m
}

// Rack adds a move of the focus to a subject, or to infinity by the name inf.
func (m Maker) Rack(to, anchor, because string, start, land float64) Maker {
	p := m.pull("rack", to, start, land)
	p.Anchor, p.Because = anchor, because
	if to == "inf" {
		p.To, p.ToLens, p.ToM = "", math.Inf(1), plan.Number(math.Inf(1))
	}
	if m.Optics.Ring != nil {
		m.turn(p)
	}
	return m
}

func (m Maker) pull(kind, to string, start, land float64) *plan.Pull {
	p := &plan.Pull{Number: len(m.Pulls) + 1, Kind: kind, To: to, Target: to, Profile: "smooth",
		Start: plan.Number(start), Land: plan.Number(land),
		StartFrame: m.Rate.Frames(start), LandFrame: m.Rate.Frames(land),
		FromLens: m.FocusAt(start), From: m.Optics.Start.Name,
		FromDeg: plan.None(), ToDeg: plan.None(), HandDeg: plan.None(), WindowHand: plan.NoInterval(), Peak: plan.None(),
		Needed: plan.None(), Spread: plan.None(), Chance: plan.None(), Ceiling: plan.None(), Lag: plan.None(),
		LeftBlur: plan.None(), ReachedBlur: plan.None(), Breathing: plan.None(),
		SharpShare: plan.None(), WorstShare: plan.None(), WorstAt: plan.None(), LagDeg: plan.None(), ChanceBand: plan.NoInterval(), CeilingBand: plan.NoInterval()}
	if n := len(m.Pulls); n > 0 {
		p.From = m.Pulls[n-1].To
	}
	if u := m.Subject(to); u != nil {
		p.ToLens = m.LensDistanceAt(u, land)
		p.ToM = plan.Number(m.DistanceAt(u, land))
	}
	p.FromM = plan.Number(m.ToTape(p.FromLens, start))
	m.Pulls = append(m.Pulls, p)
	return p
}

// turn fills in what a ring adds to a pull.
func (m Maker) turn(p *plan.Pull) {
	from := m.RingDeg(p.FromLens, float64(p.Start))
	to := m.RingDeg(p.ToLens, float64(p.Land))
	gear := float64(m.Gear)
	travel := math.Abs(to-from) * gear
	p.FromDeg, p.ToDeg, p.HandDeg = plan.Number(from), plan.Number(to), plan.Number(travel)
	p.WindowHand = plan.Interval{plan.Number(to*gear - 1.1), plan.Number(to*gear + 1.3)}
	p.Needed, p.Chance, p.LeftBlur = 1.35, 0.86, 31.2
	if travel > 120 {
		p.Regrips, p.LostEach = 1, 0.25
		p.Grips = p.LetsGo()
	}
	p.Peak = plan.Number(1.875 * travel / (float64(p.Land-p.Start) - float64(p.Regrips)*p.LostEach))
}

// Follow adds a follow.
func (m Maker) Follow(who string, start, end float64) Maker {
	p := m.pull("follow", who, start, end)
	p.Peak = 22
	return m
}

// Walk moves a subject.
func (m Maker) Walk(who string, to, start, end float64) Maker {
	u := m.Subject(who)
	m.Blocking = append(m.Blocking, plan.Blocking{Who: who, Kind: "moves", Start: plan.Number(start), End: plan.Number(end),
		From: plan.Number(u.Along.At(start)), To: plan.Number(to), FromMM: plan.None(), ToMM: plan.None(), Profile: "even"})
	u.Along.Add(plan.Step{Start: start, End: end, To: plan.Spot{Offset: to}})
	return m
}

// Dolly moves the camera in by metres.
func (m Maker) Dolly(by, start, end float64) Maker {
	m.Blocking = append(m.Blocking, plan.Blocking{Kind: "dolly", Start: plan.Number(start), End: plan.Number(end),
		From: 0, To: plan.Number(by), FromMM: plan.None(), ToMM: plan.None(), Profile: "smooth"})
	m.Optics.Camera.Add(plan.Step{Start: start, End: end, To: plan.Spot{Offset: by}, Smooth: true})
	return m
}

// Cue names a moment.
func (m Maker) Cue(name string, t float64) Maker {
	m.Cues = append(m.Cues, plan.Cue{Name: name, T: plan.Number(t)})
	return m
}

// flag adds a finding.
func (m Maker) flag(severity, row string, t float64, pull int, text, cures string) Maker {
	m.Flags = append(m.Flags, plan.Flag{Number: len(m.Flags) + 1, Severity: severity, Code: "hard-to-land", Text: text, Cures: cures, Time: t, Row: row, Pull: pull})
	return m
}

// Made returns the shots that most tests draw, by name.
func Made() map[string]*plan.Shot {
	return map[string]*plan.Shot{
		"one-rack": OneRack(), "three-racks": ThreeRacks(), "walk": WalkAndDolly(), "crowd": Crowd(),
		"long": LongShot(), "no-ring": NoRing(), "infinity": ToInfinity(), "imperial": InFeet(),
		"long-names": LongNames(), "scripts": OtherScripts(), "near-far": NearAndFar(), "findings": LongFindings(),
		"empty": New("1", "", 4).Shot, "fast-talk": FastTalk(), "hostile": Hostile(), "both-ways": BothWays(),
		"pan-and-rack": PanAndRack(), "all-ways": AllWays(), "recut": Recut(),
	}
}

// OneRack is a shot of six seconds with a line and a rack that lands on it.
func OneRack() *plan.Shot {
	m := New("7A", "The letter is read", 6).Put("IDA", 2.4, 0.05).Put("LETTER", 1.2, 0.02).Start("IDA").
		Line("IDA", "It was *never sent.", 0.6, 2.6)
	never := m.Lines[0].Words[2].Start
	return m.Rack("LETTER", `landing on "never"`, "", never-1.1, never).Shot
}

// ThreeRacks has racks, a walk, a follow and findings of each severity.
func ThreeRacks() *plan.Shot {
	m := New("14B", "Nadia hears the door", 11.9).
		Put("NADIA", 1.7, 0.04).Put("LEDGER", 0.95, 0.02).Put("DOOR", 5.2, 0.3).Start("NADIA").
		Line("NADIA", "You kept the second ledger.", 0, 2.1).
		Line("OTTO", "I kept *every ledger.", 2.9, 4.5).Cue("knock", 5.5)
	m.Pauses = append(m.Pauses, plan.Pause{Start: 2.1, End: 2.9}, plan.Pause{Start: 4.5, End: 5.5})
	every := m.Lines[1].Words[2].Start
	return m.Rack("LEDGER", `landing on "every"`, "he means this one", every-1.4, every).
		Rack("DOOR", "on knock", "", 5.5, 7.7).
		Walk("NADIA", 3.2, 8.7, 11.2).
		Rack("NADIA", "", "she goes", 8.7, 9.9).Follow("NADIA", 9.9, 11.9).
		flag("warning", "hand", 3.9, 1, "NADIA to LEDGER lands 84 times in 100; 90 are wanted.", "over 1.9 s, or f/4").
		flag("note", "hand", 6.5, 2, "The hand turns 188° and must let go once; that costs 0.39 s.", "").
		flag("error", "lines", 5.5, 2, "The focus leaves OTTO within his line.", "because").Shot
}

// BothWays has racks on a ring with play whose marks were come to from both sides.
func BothWays() *plan.Shot {
	s := ThreeRacks()
	s.Ring = Play(2)
	return s
}

// Play is the ring of the lens of New, measured, with a play in degrees and marked both ways.
func Play(deg float64) *plan.Ring {
	none := plan.None()
	r := &plan.Ring{Kind: plan.Measured, Throw: 310, Diameter: 110, Girth: none, Offset: none, Play: plan.Number(deg), Marked: "both"}
	for _, m := range New("", "", 1).Optics.Ring.Marks() {
		r.Marks = append(r.Marks, plan.RingMark{Distance: plan.Number(m.Distance), Deg: plan.Number(m.Angle), Second: plan.Number(m.Angle - deg/2)})
	}
	return r
}

// WalkAndDolly has somebody who walks while the camera goes in.
func WalkAndDolly() *plan.Shot {
	m := New("22", "Down the corridor", 14).Put("BRAM", 6, 0.25).Put("LAMP", 2.2, 0.1).Put("CLERK", 3.4, 0.2).Start("BRAM")
	m.BeginsAt, m.Begins = "01:00:10:12", 86652
	m.Actions = append(m.Actions, plan.Action{Text: "Bram puts the lamp out and waits for the clerk to turn round", Start: 6.2, End: 8})
	return m.Walk("BRAM", 3.1, 1, 5).Dolly(0.9, 2, 9).Follow("BRAM", 0.5, 6).
		Rack("LAMP", "", "the light goes", 6.2, 7.4).Rack("CLERK", "on CLERK", "", 9.5, 11).
		Line("CLERK", "Who is *there? Answer me or I call the watch.", 9.5, 12.4).Shot
}

// Crowd has fourteen subjects near one another.
func Crowd() *plan.Shot {
	m := New("31C", "The whole table turns", 15)
	for i := range 14 {
		m.Put(fmt.Sprintf("GUEST%d", i+1), 1.2+0.31*float64(i)+0.02*float64(i*i), 0.05)
	}
	m.Start("GUEST1")
	for i := range 6 {
		t := 1 + 2.2*float64(i)
		m.Rack(fmt.Sprintf("GUEST%d", (i*5+3)%14+1), "", "", t, t+1)
		m.Line(fmt.Sprintf("GUEST%d", (i*5+3)%14+1), "And who asked you, *sir?", t, t+1.9)
	}
	return m.Shot
}

// LongShot lasts three minutes and needs many sheets.
func LongShot() *plan.Shot {
	m := New("60", "Three minutes in one take", 180).Put("ANNA", 1.5, 0.05).Put("BO", 2.3, 0.05).Put("WINDOW", 8, 0.2).Start("ANNA")
	names := []string{"BO", "WINDOW", "ANNA"}
	for i := range 60 {
		t := 1 + 2.95*float64(i)
		m.Line(names[i%3], "There is nothing *left to say about that evening.", t, t+2.4)
		m.Rack(names[i%3], `on "left"`, "", t+0.8, t+1.9)
		if i%4 == 0 {
			m.flag([]string{"note", "warning", "error"}[i%3], []string{"hand", "sharp", "lines", "distance"}[i/4%4], t+1, i+1,
				"The move lands 71 times in 100; 90 are wanted.", "over 2.2 s, f/5.6, or a wheel of 120 mm")
		}
	}
	return m.Shot
}

// NoRing has a lens by wire.
func NoRing() *plan.Shot {
	m := New("3", "By wire", 8)
	m.Optics.Ring = nil
	return m.Put("PIA", 1.4, 0.05).Put("GATE", 9, 1).Start("PIA").Rack("GATE", "", "", 3, 4.2).
		flag("warning", "hand", 3, 1, "A ring by wire repeats no mark.", "").Shot
}

// ToInfinity racks to infinity and back.
func ToInfinity() *plan.Shot {
	return New("9", "Out to sea", 9).Put("KEEPER", 2, 0.1).Put("SHIP", 60, 8).Start("KEEPER").
		Rack("SHIP", "", "", 2, 3.5).Rack("inf", "", "", 5, 6).Rack("KEEPER", "", "", 7, 8.4).Shot
}

// InFeet is ThreeRacks with units imperial.
func InFeet() *plan.Shot {
	s := ThreeRacks()
	s.Imperial = true
	return s
}

// LongNames has names, cues and reasons that no page has room for.
func LongNames() *plan.Shot {
	return New("114-DELTA-PICKUP", "A title that goes on for far longer than any slate would have room for, and then still goes on some more", 12).
		Put("THE LANDLADY'S ELDEST NEPHEW FROM ABROAD", 1.7, 0.05).Put("WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW", 1.72, 0.05).Put("MRS. DALE", 1.75, 0.05).
		Start("MRS. DALE").Line("THE LANDLADY'S ELDEST NEPHEW FROM ABROAD", "Incomprehensibilities notwithstanding, *antidisestablishmentarianism!", 1, 3).
		Cue("a-cue-with-a-name-that-hardly-ends-before-the-page-does", 10.5).
		Rack("THE LANDLADY'S ELDEST NEPHEW FROM ABROAD", `landing on "antidisestablishmentarianism" 2 + 0.4 s`, strings.Repeat("because of what she said before ", 12), 4, 5.5).Shot
}

// OtherScripts has names and lines in Japanese, Hebrew and Arabic.
func OtherScripts() *plan.Shot {
	return New("5", "夜の駅 · תחנה", 10).Put("花子", 1.6, 0.05).Put("שרה", 2.6, 0.05).Put("ليلى", 4, 0.05).Start("花子").
		Line("花子", "どこへ *行く の ですか。", 0.5, 2.5).Line("שרה", "אני *הולכת הביתה עכשיו.", 3, 5).Line("ليلى", "انتظريني قليلا *هناك", 5.4, 7.8).
		Rack("שרה", `on "הולכת"`, "", 3.6, 4.7).Rack("ليلى", `on "هناك"`, "", 7, 8.2).Shot
}

// NearAndFar has subjects from 32 cm to 20 km.
func NearAndFar() *plan.Shot {
	m := New("88", "From the watch to the hills", 10)
	m.Optics.Ring, _ = ring.Unit(0.075, 0.31, 280)
	return m.Put("WATCH", 0.32, 0.004).Put("HAND", 0.38, 0.02).Put("FENCE", 40, 1).Put("BARN", 120, 20).Put("HILL", 900, 100).Put("MOON", 20000, 0).
		Start("WATCH").Rack("HILL", "", "", 2, 5).Rack("FENCE", "", "", 6, 6.6).Rack("WATCH", "", "", 7, 9).Shot
}

// LongFindings has more findings than one sheet has room for.
func LongFindings() *plan.Shot {
	m := New("40", "Everything that can be wrong", 13).Put("ADA", 1.7, 0.05).Put("BELL", 3, 0.1).Start("ADA").
		Rack("BELL", "", "", 3, 4).Rack("ADA", "", "", 7, 7.4)
	for i := range 24 {
		m.flag([]string{"note", "warning", "error"}[i%3], []string{"lines", "distance", "sharp", "hand"}[i%4], 3.2+0.02*float64(i), 1,
			strings.Repeat("The move from ADA to BELL needs more than it has. ", 1+i%7), strings.Repeat("over 1.9 s, or f/4; ", i%5))
	}
	m.flag("error", "hand", 7, 2, strings.Repeat("unbreakable", 40), "")
	for i := range m.Flags {
		m.Flags[i].Code += fmt.Sprint(i) // each has a cause of its own
	}
	return m.Shot
}

// FastTalk has lines so fast that their words do not fit on a row.
func FastTalk() *plan.Shot {
	m := New("12", "Nobody draws breath", 16).Put("TESS", 1.7, 0.05).Put("UMA", 2.6, 0.05).Start("TESS")
	text := "I told you that the boat would not wait for anybody and that *includes your brother and his seventeen suitcases"
	for i := range 4 {
		t := 4 * float64(i)
		who := []string{"TESS", "UMA"}[i%2]
		m.Line(who, text, t, t+3.9).Line(who, "no no *no never", t+3.5, t+4)
		m.Rack([]string{"UMA", "TESS"}[i%2], `on "includes"`, "", t+2.2, t+3.2)
	}
	return m.Shot
}

// Held gives the pulls of a shot places of the thumb on a ring or wheel, plausible and
// not computed, some with a re-grip; and returns the shot.
func Held(s *plan.Shot, on string) *plan.Shot {
	for i, p := range s.Pulls {
		h := plan.Hold{HoldOn: on, HoldFrom: plan.Number(1 + i%12), HoldTo: 12, Regrip: plan.None(), RegripTo: plan.None()}
		if h.HoldSays = "take hold with the thumb at 4:30 o'clock, land at 12"; i%3 == 2 {
			h.Regrip, h.RegripTo, h.HoldSays = 10, 2.5, "on the wheel: "+h.HoldSays+", and more of it"
		}
		if p.ToDeg.Known() && p.FromDeg.Known() {
			p.Hold = &h
		}
	}
	return s
}

// Hostile has markup, control characters and broken UTF-8 in its texts.
func Hostile() *plan.Shot {
	const script = `</text><script>alert("x")</script>&amp;<!--]]>`
	m := New(script, "bell\x07 \u202egnirts\u202c \x00 \ufffe tab\there \xff", 5).Put(script, 1.5, 0.1).Put("B' onload=\"x\"", 3, 0.1).Start(script).
		Line(script, script+" *<b>", 0.5, 2).Cue("'\"<>&", 3)
	m.PlanName, m.Puller, m.Lens = script, "\u2066iso\u2069", "75\" & <i>"
	return m.Rack("B' onload=\"x\"", `on '"<>&`, script, 3, 4).flag("error", "hand", 3, 1, script, script).Shot
}

// Draw draws a shot with any mixture of what shots hold.
func Draw(t *rapid.T) *plan.Shot {
	text := rapid.StringOfN(rapid.RuneFrom([]rune("abcdefgh WIMijl ,.'\"<&>花שرé")), 1, 60, -1)
	duration := rapid.Float64Range(0.2, 200).Draw(t, "duration")
	moment := rapid.Float64Range(0, duration)
	m := New(text.Draw(t, "id"), text.Draw(t, "title"), duration)
	m.Imperial = rapid.Bool().Draw(t, "imperial")
	m.Gear = plan.Number(rapid.Float64Range(0.3, 4).Draw(t, "gear"))
	if rapid.Bool().Draw(t, "timecode") {
		m.BeginsAt, m.Begins = "01:00:10:12", 86652
	}
	switch rapid.IntRange(0, 2).Draw(t, "ring") {
	case 0:
		m.Optics.Ring = nil
	case 1:
		m.Optics.Ring, _ = ring.Unit(0.075, 0.31, 300)
	}
	var names []string
	for i := range rapid.IntRange(1, 14).Draw(t, "subjects") {
		name := fmt.Sprint(text.Draw(t, "name"), i)
		names = append(names, name)
		d := math.Exp(rapid.Float64Range(math.Log(0.31), math.Log(5000)).Draw(t, "distance"))
		m.Put(name, d, rapid.Float64Range(0, d/3).Draw(t, "deep"))
	}
	someone := rapid.SampledFrom(names)
	m.Start(someone.Draw(t, "start"))
	for range rapid.IntRange(0, 3).Draw(t, "walks") {
		from := moment.Draw(t, "from")
		m.Walk(someone.Draw(t, "who"), rapid.Float64Range(0.4, 30).Draw(t, "to"), from, rapid.Float64Range(from, duration).Draw(t, "until"))
	}
	if rapid.IntRange(0, 3).Draw(t, "rig") == 0 {
		m.drawRig(t, names, duration)
	}
	pulls := rapid.IntRange(0, 60).Draw(t, "pulls")
	for i := range pulls {
		each := duration / float64(pulls)
		at := (float64(i) + rapid.Float64Range(0, 0.4).Draw(t, "at")) * each
		m.Rack(rapid.SampledFrom(append(names, "inf")).Draw(t, "to"), text.Draw(t, "anchor"), text.Draw(t, "because"), at, at+each*rapid.Float64Range(0.1, 0.6).Draw(t, "over"))
	}
	for range rapid.IntRange(0, 30).Draw(t, "lines") {
		from := moment.Draw(t, "from")
		m.Line(rapid.SampledFrom(append(names, "VOICE")).Draw(t, "who"), text.Draw(t, "line")+" *and "+text.Draw(t, "line"), from, rapid.Float64Range(from, duration).Draw(t, "until"))
	}
	for range rapid.IntRange(0, 8).Draw(t, "cues") {
		m.Cue(text.Draw(t, "cue"), moment.Draw(t, "at"))
	}
	for range rapid.IntRange(0, 8).Draw(t, "actions") {
		from := moment.Draw(t, "from")
		m.Actions = append(m.Actions, plan.Action{Text: text.Draw(t, "action"), Start: plan.Number(from), End: plan.Number(rapid.Float64Range(from, duration).Draw(t, "until"))})
	}
	for range rapid.IntRange(0, 50).Draw(t, "flags") {
		m.flag(rapid.SampledFrom([]string{"note", "warning", "error"}).Draw(t, "severity"),
			rapid.SampledFrom([]string{"lines", "distance", "sharp", "hand", ""}).Draw(t, "row"), moment.Draw(t, "at"), 0,
			strings.Repeat(text.Draw(t, "text")+" ", rapid.IntRange(1, 12).Draw(t, "times")), text.Draw(t, "cures"))
	}
	return m.Shot
}

// FeetLens is a shot with a lens that is engraved in feet.
func FeetLens(t *testing.T) *plan.Shot {
	t.Helper()
	foot := plan.Inch * plan.InchesPerFoot
	law, err := ring.FromMarks([]ring.Mark{
		{Distance: 20 * plan.Inch, Angle: 0}, {Distance: 2 * foot, Angle: 62}, {Distance: 3 * foot, Angle: 150},
		{Distance: 20 * foot, Angle: 290}, {Distance: math.Inf(1), Angle: 310},
	}, ring.Shape{Focal: 0.075, Throw: 310})
	if err != nil {
		t.Fatal(err)
	}
	s := ThreeRacks()
	s.Optics.Ring = law
	s.Optics.Engraved = []string{`1'8"`, "2'", "3 ft", "20'", "inf"}
	return s
}
