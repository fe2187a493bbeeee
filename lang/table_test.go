// The one table of inputs: it feeds the parser, the formatter and the fuzz
// seeds.

package lang

// inputs holds sources that have no mistakes, and how the formatter lays them
// out; want is empty where that is as they are.
var inputs = []struct{ name, src, want string }{
	{"empty", "", ""},
	{"only blank lines", "\n \n\t\n", ""},
	{"only a comment", "  # nothing yet", "# nothing yet\n"},
	{"no line end", "rate 24", "rate 24\n"},
	{"file statements", `plan "Harbour \"office\""
rate 29.97df
units imperial
pace 150 wpm
use "kit.pull"
edit "cut-2.edl"
edit "cut-2.srt" from 01:00:00;00
edit "talk.srt" from 01:00:00;00, unscripted
script "page.fountain"
script "page.fountain" scene "12A"
clips "day-12.ale"
watched on 55 in diagonal screen from 2.5 m
sharp to 1 arcmin
land 95 %
quickest 0.4 s
tape from lens
let near = (2 m + 10 cm) * 3 / 4 - 5 cm
let beat = -0.8 s
voice OTTO
subject NADIA at 1.70 m, 12 deg left, deep 4 cm, sways 2 cm
subject LETTER at NADIA - 35 cm
with camera A, lens "75", stop f/2.8, nd 0.9
`, ""},
	{"edit and script without blanks", "edit\"a.srt\"from 01:00:00:00\nscript \"p.fountain\"scene\"3\"\n", "edit \"a.srt\" from 01:00:00:00\nscript \"p.fountain\" scene \"3\"\n"},
	{"a name that is clips", "clips\"a.ale\"\nsubject CLIPS at 2 m\nlet clips2 = 1 m\nshot 1\nclips: \"Aye.\"\nclips moves to 2 m, over 2 s, on \"Aye\"\n",
		"clips \"a.ale\"\nsubject CLIPS at 2 m\nlet clips2 = 1 m\n\nshot 1\n  clips: \"Aye.\"\n  clips moves to 2 m, over 2 s, on \"Aye\"\n"},
	{"clips of a shot", "shot 1\nclip\"1-*\"reel\"A0\"take\"3\"from 01:00:00:00 to 01:01:00:00\nclip \"x\"\nreel: \"Aye.\"\ntake moves to 2 m, over 2 s, on \"Aye\"\n",
		"shot 1\n  clip \"1-*\", reel \"A0\", take \"3\", from 01:00:00:00 to 01:01:00:00\n  clip \"x\"\n  reel: \"Aye.\"\n  take moves to 2 m, over 2 s, on \"Aye\"\n"},
	{"rate with a space", "rate 59.94 df\n", "rate 59.94df\n"},
	{"camera", "camera A\nsensor 24.89x18.66mm\nrecords 3840px\non shoulder\niso 800\nshutter 1/50s\nmonitor 7in diagonal from 60cm 1920px\n",
		"camera A\n  sensor 24.89 x 18.66 mm\n  records 3840 px\n  on shoulder\n  iso 800\n  shutter 1/50 s\n  monitor 7 in diagonal from 60 cm, 1920 px\n"},
	{"lens", `lens "25-250"
  focal 25 mm to 250 mm
  stops T3.5 to T22 at 25 mm
  stops f/3.2 to f/21
  closest 5' 6 1/2"
  ring 310 deg, diameter 110 mm
  turns right
  mark 6 in at 0 deg
  mark inf at 310 deg
  breathing 2 %
  keeps focus through zoom
  pupil 1.2
`, ""},
	{"feet and inches", `subject A at 4 ft 6 in
subject B at 4'-6" 1' 2" left, deep 6"
subject C at 5' 6''
subject D at 4 ft 6 in left, deep 4ft 6in
subject E at 4 ft 6 1/2 in 2 ft right
subject F at A + 4 ft 6 in 2 * 6 in right
subject G at 4' 6 in left
subject H at 4 ft 6" + 1 cm left
subject I at 4 ft 6" sways 6.5″
subject J at 4' 20 cm left
watched on 4 ft 6 in screen from 9′–6″
lens A
closest 18"
ring 300 deg diameter 4 1/2"
mark 18" at 0 deg
camera B
monitor 7" diagonal from 2 ft 6 in 1920 px
sensor 1"x0.7"
shot 1
rack to A - 6"
A moves to 4 ft 6 in 3 in right over 2 s
dolly in 1 ft 6 in over 2 s
glance(4 ft 6 in, 6")
`, `subject A at 4 ft 6 in
subject B at 4'-6" 1' 2" left, deep 6"
subject C at 5' 6''
subject D at 4 ft, 6 in left, deep 4 ft 6 in
subject E at 4 ft 6 1/2 in, 2 ft right
subject F at A + 4 ft 6 in, 2 * 6 in right
subject G at 4' 6 in left
subject H at 4 ft, 6" + 1 cm left
subject I at 4 ft 6", sways 6.5″
subject J at 4' 20 cm left
watched on 4 ft 6 in screen from 9′–6″

lens A
  closest 18"
  ring 300 deg, diameter 4 1/2"
  mark 18" at 0 deg

camera B
  monitor 7" diagonal from 2 ft 6 in, 1920 px
  sensor 1" x 0.7"

shot 1
  rack to A - 6"
  A moves to 4 ft 6 in, 3 in right over 2 s
  dolly in 1 ft 6 in over 2 s
  glance(4 ft 6 in, 6")
`},
	{"lets", "let HERO=NADIA\nlet EYES = HERO-5cm\nlet BOTH = HERO and \"MRS. DALE\"\nlet ALL = BOTH and T2 and OTTO\n",
		"let HERO = NADIA\nlet EYES = HERO - 5 cm\nlet BOTH = HERO and \"MRS. DALE\"\nlet ALL = BOTH and T2 and OTTO\n"},
	{"rings", "lens A\n  ring by wire\nlens B\n  ring none\n  loses focus through zoom\nlens C\n  ring 1 turn diameter 4 in\n",
		"lens A\n  ring by wire\n\nlens B\n  ring none\n  loses focus through zoom\n\nlens C\n  ring 1 turn, diameter 4 in\n"},
	{"puller", "puller \"1st\"\n  takes \"takes.csv\"\n  hand 5 bit / s\n  limit 400 deg / s\n  grip 180 deg\n  spread 1.5 mm\n  bias -2 deg\n",
		"puller \"1st\"\n  takes \"takes.csv\"\n  hand 5 bit/s\n  limit 400 deg/s\n  grip 180 deg\n  spread 1.5 mm\n  bias -2 deg\n"},
	{"how far light may go", "camera A\niso 800to 1600\nshutter 1/50s to 1/48 s\ncamera B\nshutter 172.8deg to 180deg\n",
		"camera A\n  iso 800 to 1600\n  shutter 1/50 s to 1/48 s\n\ncamera B\n  shutter 172.8 deg to 180 deg\n"},
	{"a section ends at a file statement", "camera A\n  iso 800\nrate 24\n", "camera A\n  iso 800\n\nrate 24\n"},
	{"notes beside a shot", "shot 1\nnote   \"WATCH THE BOOM\"\n start on note\n cue note on note \"a\"\nnote: \"A.\"\nnote(1)\nnote moves to 2m over 1s\nnote \"two\" # three\n",
		"shot 1\n  note \"WATCH THE BOOM\"\n  start on note\n  cue note on note \"a\"\n  note: \"A.\"\n  note(1)\n  note moves to 2 m over 1 s\n  note \"two\"  # three\n"},
	{"shot", `shot 12-B "The door"
  with camera A, lens "75"
  begins at 01:00:10;12
  lasts 20 s
  start on NADIA and LEDGER
  sharp to 0.025 mm
  subject TRAY at LEDGER + 5 cm
  NADIA: "You kept it.", on end of OTTO + 0.5 s, lasting 2.1 s
  OTTO: "Every one.", from 3 s to 4.5 s
  pause 2 * beat
  action "sits down", lasting 1.5 s, on "ledger" 2
  cue knock
  cue bell on OTTO "every" 2 - 6 fr
  cue chime on end of "every"
  cue step on end of OTTO "every ledger" 2 - 6 fr
  cue sigh on end of "MRS. DALE" + 1 s
  cue halt on end of dolly + 0.5 s
  rack to LEDGER - 5 cm, landing on "every", over 1.4 s, smooth, because "he means it"
  rack to inf, at 4 s, even
  rack to 5'6", on knock
  hold 1 s
  NADIA moves to 3.2 m, 1 m right over 2.5 s, on bell, even
  NADIA moves 15 cm nearer over 1 s, at 3 s
  NADIA moves 2 * step farther at 1.2 m/s, on "ledger" 2, smooth
  NADIA moves to OTTO - 40 cm, 1 m left at 4 ft/s, at 12 s
  dolly in 30 cm at 0.25 m/s
  dolly in 30 cm over 2 s
  dolly out 1 m over 90 fr, at 3 s, smooth
  zoom to 50 mm over 2 s
  follow NADIA until knock + 1 s
  follow NADIA on "every" 2
  follow OTTO at 3 s, until end of OTTO
  glance(NADIA, LEDGER - 2 cm, "every" 2)
`, ""},
	{"soft words are names", "subject nearer at 2 m\nsubject farther at 3 m\nsubject x at nearer\nshot 1\n  start on nearer\n  nearer moves 1m nearer at 1/2m / s at 2 s\n  nearer: \"No.\"\n  farther moves farther farther over 2 s\n  nearer(farther)\n",
		"subject nearer at 2 m\nsubject farther at 3 m\nsubject x at nearer\n\nshot 1\n  start on nearer\n  nearer moves 1 m nearer at 1/2 m/s, at 2 s\n  nearer: \"No.\"\n  farther moves farther farther over 2 s\n  nearer(farther)\n"},
	{"words of lens and camera are names", "subject hand at (2 m)\nlens stop\n  closest(75 cm)\n  mark 75cm at -2 deg\n  mark (1 m)at 0 deg\n  focal(75 mm)\npuller limit\n  bias-2 deg\n  hand 5 bit/s\nshot 1\n  with camera sensor, lens stop, stop f/2.8, focal focal, puller hand\n  stop: \"No.\"\n  mark moves to hand - 3 cm over 2 s, on ring\n  takes(stop)\n  rack to stop and stops, on hand \"x\", landing on end of ring - 2 fr\n  follow tripod until iso * 2\n",
		"subject hand at (2 m)\n\nlens stop\n  closest (75 cm)\n  mark 75 cm at -2 deg\n  mark (1 m) at 0 deg\n  focal (75 mm)\n\npuller limit\n  bias -2 deg\n  hand 5 bit/s\n\nshot 1\n  with camera sensor, lens stop, stop f/2.8, focal focal, puller hand\n  stop: \"No.\"\n  mark moves to hand - 3 cm over 2 s, on ring\n  takes(stop)\n  rack to stop and stops, on hand \"x\", landing on end of ring - 2 fr\n  follow tripod until iso * 2\n"},
	{"clauses without commas", "shot 1\nrack to A on \"x\" 2 over 2 s even because \"y\"\nwith camera A lens \"75\" stop T2.1\nB: \"hello\" on A lasting 2 s\nA moves to 3 m 10 cm left over 2 s on knock even\nsubject C at 2 m deep 4 cm sways 1 cm\n",
		"shot 1\n  rack to A, on \"x\" 2, over 2 s, even, because \"y\"\n  with camera A, lens \"75\", stop T2.1\n  B: \"hello\", on A, lasting 2 s\n  A moves to 3 m, 10 cm left over 2 s, on knock, even\n  subject C at 2 m, deep 4 cm, sways 1 cm\n"},
	{"move", "move glance( who,back ,word )\n  rack to who , landing on word,over 1.2 s\n\nmove beat()\n  pause 1 s\n",
		"move glance(who, back, word)\n  rack to who, landing on word, over 1.2 s\n\nmove beat()\n  pause 1 s\n"},
	{"a statement over several lines", "shot 1\nrack to LEDGER,  # he means it\n# soft at first\nlanding on \"every\",\n    over 1.4 s\npause 1 s\n",
		"shot 1\n  rack to LEDGER,  # he means it\n    # soft at first\n    landing on \"every\",\n    over 1.4 s\n  pause 1 s\n"},
	{"comments", "# the film\n\n\n# its pace\nrate 24   #slow\n# about the camera\n\n# the camera\ncamera A\n# inside\niso 800\n  # last\n\n\n# a shot\nshot 1\nhold 1 s\n# end",
		"# the film\n\n# its pace\nrate 24  #slow\n# about the camera\n\n# the camera\ncamera A\n  # inside\n  iso 800\n  # last\n\n# a shot\nshot 1\n  hold 1 s\n  # end\n"},
	{"names", "subject JEAN-LUC at 2 m\nsubject O’BRIEN at 2 m\nsubject R2-D2 at JEAN-LUC-10 cm\nsubject \"GUARD #2\" at 2 m\nsubject T2 at 3 m\nsubject Зоя at T2-1 m\nsubject ÉLODIE_2 at 1 m\nsubject 小林 at 2 m\nsubject नंदिता at 3 m\n",
		"subject JEAN-LUC at 2 m\nsubject O’BRIEN at 2 m\nsubject R2-D2 at JEAN-LUC - 10 cm\nsubject \"GUARD #2\" at 2 m\nsubject T2 at 3 m\nsubject Зоя at T2 - 1 m\nsubject ÉLODIE_2 at 1 m\nsubject 小林 at 2 m\nsubject नंदिता at 3 m\n"},
	{"names of T", "shot 5m\n  T2: \"Hello.\"\n  T2 moves to 3 m over 2 s\n  rack to T2 and \"MRS. DALE\", on T2\n  \"MRS. DALE\": \"Well.\"\n  rack to T2 + 5 cm, on \"MRS. DALE\" \"well\"\n", ""},
	{"other signs", "subject A at 5′6″, 2° left\nsubject B at A − 10 cm\nsubject C at 6’\ncamera A\n  sensor 24 mm × 36 mm\nshot 1\n  A: “He said \"no\" to me.”\n",
		"subject A at 5′6″, 2° left\nsubject B at A − 10 cm\nsubject C at 6’\n\ncamera A\n  sensor 24 mm × 36 mm\n\nshot 1\n  A: “He said \"no\" to me.”\n"},
	{"no-break and thin spaces", "rate\u00A024\nsubject\u2009A\u202Fat 1.70\u00A0m\n", "rate 24\nsubject A at 1.70 m\n"},
	{"line ends and byte order mark", "\uFEFFrate 24\r\nlet a = 1 s\rlet b = 2 s\r\n", "rate 24\nlet a = 1 s\nlet b = 2 s\n"},
	{"signs", "let a = - 2 m\nlet b = (-a)\nlet c = 2 m*-1\nlet d = a-b\nlet e = a -2 m\nlet g = +2 m+a\n",
		"let a = -2 m\nlet b = (-a)\nlet c = 2 m * -1\nlet d = a-b\nlet e = a - 2 m\nlet g = +2 m + a\n"},
	{"fractions", "let a = 5 1/2 in\nlet b = 1/50 s\nlet c = 6 / 2 * 1 s\nlet d = beat/2\nlet e = 4*beat\n",
		"let a = 5 1/2 in\nlet b = 1/50 s\nlet c = 6 / 2 * 1 s\nlet d = beat / 2\nlet e = 4 * beat\n"},
	{"speed and quotient", "let a = 90 deg/s\nlet b = 90 deg / t\n", ""},
	{"what is known of a lens", "camera A\nsensor super35 3-perf crop 2.39\nshoots 96\ncamera B\nsensor 2/3in type 16:9\ncamera C\nsensor 1\" type, crop 2\ncamera D\nsensor aps-c\ncamera E\nsensor 24.89x18.66mm crop 1.85\n" +
		"lens A\nring 300 deg girth 346mm\nmark closest at 12mm\nmark 92 cm at 84 mm and 83mm\nmark inf at 278 mm\nmarks measured within 2deg\nends slip\nplay 3deg marked to inf\n" +
		"lens B\nring girth 346 mm diameter 110 mm\nmark 1 m at 32%\nmark 2 m at 3.2 of 10, and 3.1of 10\nmark 3 m at 4o’clock and 4:30  o'clock\nmarks engraved\nplay 2 deg marked both ways\nends hard\n" +
		"lens C\nring by wire linear over 360 deg diameter 80 mm\nsqueeze 2 at rear\nsqueeze 1.85 at 1 m\nratio 1/2 at 30cm\ndarkens f/2.8 to f/5.6 at 30 cm\nbreathing 3 % at 75cm\nbreathing -1%at 2 m\nplanes -12mm apart\n" +
		"lens D\nring diameter 4 in\nplay 1 deg marked to closest\nshot 1\nwith travel 330deg from 2' to 8' diopter 1/2 tube 12mm shoots 96\nwith travel 1 turn, wheel 80 mm\n",
		"camera A\n  sensor super35 3-perf, crop 2.39\n  shoots 96\n\ncamera B\n  sensor 2/3 in type 16:9\n\ncamera C\n  sensor 1\" type, crop 2\n\ncamera D\n  sensor aps-c\n\ncamera E\n  sensor 24.89 x 18.66 mm, crop 1.85\n\n" +
			"lens A\n  ring 300 deg, girth 346 mm\n  mark closest at 12 mm\n  mark 92 cm at 84 mm and 83 mm\n  mark inf at 278 mm\n  marks measured, within 2 deg\n  ends slip\n  play 3 deg, marked to inf\n\n" +
			"lens B\n  ring girth 346 mm, diameter 110 mm\n  mark 1 m at 32 %\n  mark 2 m at 3.2 of 10, and 3.1 of 10\n  mark 3 m at 4 o'clock and 4:30 o'clock\n  marks engraved\n  play 2 deg, marked both ways\n  ends hard\n\n" +
			"lens C\n  ring by wire, linear over 360 deg, diameter 80 mm\n  squeeze 2 at rear\n  squeeze 1.85 at 1 m\n  ratio 1/2 at 30 cm\n  darkens f/2.8 to f/5.6 at 30 cm\n  breathing 3 % at 75 cm\n  breathing -1 % at 2 m\n  planes -12 mm apart\n\n" +
			"lens D\n  ring diameter 4 in\n  play 1 deg, marked to closest\n\nshot 1\n  with travel 330 deg from 2' to 8', diopter 1/2, tube 12 mm, shoots 96\n  with travel 1 turn, wheel 80 mm\n"},
	{"values called like the words around them", "camera A\nsensor x x x crop crop\nsensor perf x 3 mm-perf\nlens A\nring diameter diameter diameter girth girth\nring girth\nmark closest - closest at girth and girth\nmark closest at o'clock\nplay marked marked both ways\nplanes apart apart\nmarks measured within within\nshot 1\nsensor moves 3m-perf nearer over 1 s\nwith travel travel from from_ to tube tube tube\n",
		"camera A\n  sensor x x x, crop crop\n  sensor perf x 3 mm - perf\n\nlens A\n  ring diameter diameter diameter girth girth\n  ring girth\n  mark closest - closest at girth and girth\n  mark closest at o'clock\n  play marked marked both ways\n  planes apart apart\n  marks measured, within within\n\nshot 1\n  sensor moves 3 m - perf nearer over 1 s\n  with travel travel from from_ to tube tube tube\n"},
	{"camera moves", `shot 1
  with camera A, operator INES, puller INES
  pan left 12 deg over 1 s
  pan right 1/2 turn over 2 s, on "x", even
  pan to PAUL, landing on "door", over 1.2 s
  pan and tilt to LETTER over 1 s, at 3 s, smooth
  pan with ANNA until end of moves
  pan and tilt with ANNA, on 2 s, until knock
  tilt up 3 deg, with pan
  tilt down 3 deg, on 2 s, landing on "x"
  tilt to LETTER, with boom
  tilt with ANNA
  boom down 35 cm over 1.8 s, on "like"
  boom up 1 ft 6 in at 0.2 m/s, landing on 4 s
  track left 1 m over 2 s, landing at 4 s
  track right 5' at 1 ft/s
  push in 80 cm over 3 s, on 0.5 s
  pull out 1 m, with tilt
  dolly in 30 cm, landing on knock, over 2 s
  zoom to 50 mm, with dolly
  rack to PAUL, with pan, because "he has it"
  rack to PAUL, with zoom
  rack to PAUL,
    with track,
    because "he has it"
`, ""},
	{"a scene", `plan "The locks"
crop 2.39

scene "The lock house"
  origin "the hinge of the door"
  mark SILL at 40 cm right, 1.3 m upstage
  mark LAMP at SILL, 2' left, 1.7 m high
  mark STEP at reach towards LAMP
  subject ANNA at 0 m right, eyes 1.5 m, deep 4 cm, sways 1 cm
  subject PAUL at SILL, 4 ft 6 in left, 5'6" downstage
  subject KEY at ANNA, 10 cm left, 25 cm upstage, 20 cm down
  voice OTTO
  line ANNA to PAUL

  ANNA: "Is it shut?", to PAUL, on 1 s, lasting 1 s
  OTTO: "It was.", from 3 s to 4 s, off, to ANNA
  cue knock on 5 s
  PAUL moves to STEP over 2 s, eyes 1.2 m, on knock, even
  PAUL moves to SILL, 10 cm left at 1 m/s
  PAUL moves to 4 ft 6 in left over 1 s
  PAUL moves to reach + 10 cm left, 2 * (reach - 1 m) upstage over 1 s
  action "turns the key", lasting 1 s
  wait(ANNA)
  pause 1 s
  cut to 3-B, on "was", because "he lies"

scene

shot 3-A
  covers all
  camera at 80 cm right, 2.2 m downstage, 1.5 m high, aims at ANNA and PAUL, 4 deg left, 2° up
  measured ANNA 2.36 m
  measured ANNA at SILL 2.5 m, camera at end
  subject THUMB at KEY, 4 cm right, 2 cm downstage, deep 2 cm
  ANNA moves to 1.6 m right, 2 m upstage over 2 s, eyes 1.2 m
  camera moves to PAUL, 60 cm right over 2 s, landing on "was"
  camera moves to STEP, with pan
  rack to PAUL, with camera

shot 3-B "Paul"
  covers end of ANNA to end
  runs with 3-A
  matches 3-A
  camera as in 3-A, aims at PAUL, 2 deg down, because "he looks away"

shot 3-C
  covers start to "was" 2
  camera as in 3-A
  places as at "was"
  shut: "No."
  matches: "No."
`, ""},
	{"a scene without commas", "scene\"x\"\nmark A at 1 m right 2m upstage\nsubject B at A 2 m left 3' down eyes 1.5 m deep 2 cm\nB moves to A 2 m left 1 m up over 2 s\nB: \"x\" to C off\ncut to 1, on B because \"y\"\nshot 1\ncamera at 1m left 2m downstage aims at B 4 deg left because \"z\"\nmeasured B 2 m camera at end\nsubject D at 2 m, 20 cm left eyes 1 m\nsubject E at 2 m right 3 m upstage\n",
		"scene \"x\"\n  mark A at 1 m right, 2 m upstage\n  subject B at A, 2 m left, 3' down, eyes 1.5 m, deep 2 cm\n  B moves to A, 2 m left, 1 m up over 2 s\n  B: \"x\", to C, off\n  cut to 1, on B, because \"y\"\n\nshot 1\n  camera at 1 m left, 2 m downstage, aims at B, 4 deg left, because \"z\"\n  measured B 2 m, camera at end\n  subject D at 2 m, 20 cm left, eyes 1 m\n  subject E at 2 m right, 3 m upstage\n"},
	{"camera moves without commas", "move settle(who)\npan and tilt with who on 2 s until knock\npan to who landing on \"x\" over 1s\ntilt up 3° with pan\nboom up 10cm at 1m/s on 2 s even\nrack to who with pan because \"y\"\nshot 1\nwith camera A operator INES\n",
		"move settle(who)\n  pan and tilt with who on 2 s, until knock\n  pan to who, landing on \"x\", over 1 s\n  tilt up 3°, with pan\n  boom up 10 cm at 1 m/s, on 2 s, even\n  rack to who, with pan, because \"y\"\n\nshot 1\n  with camera A, operator INES\n"},
	{"words of camera moves are names", "subject pan at 2 m\nsubject tilt at pan + 1 m, boom * 2 left, deep up\nlet track = pan and push\nlet boom=2 m\nmove pull(up,down)\n  rack to up, on down\nshot 1\n  with camera operator, operator operator\n  with operator pan puller tilt\n  pan: \"No.\"\n  tilt(pan, push)\n  boom moves to track - up over down, on push\n  track moves boom nearer at 1 m/s\n  pan to pan with pan\n  pan with with_ until tilt\n  pan and tilt with pan until end of pan\n  pan and tilt to tilt, landing on pan \"x\", over up\n  tilt up up over down\n  boom down down with boom\n  track left track with tilt\n  push in push over pull\n  pull out pull over push\n  rack to pan and tilt with pan\n  rack to boom, on track, over pull\n  start on push\n  cue pan on tilt - 1 s\n",
		"subject pan at 2 m\nsubject tilt at pan + 1 m, boom * 2 left, deep up\nlet track = pan and push\nlet boom = 2 m\n\nmove pull(up, down)\n  rack to up, on down\n\nshot 1\n  with camera operator, operator operator\n  with operator pan, puller tilt\n  pan: \"No.\"\n  tilt(pan, push)\n  boom moves to track - up over down, on push\n  track moves boom nearer at 1 m/s\n  pan to pan, with pan\n  pan with with_ until tilt\n  pan and tilt with pan until end of pan\n  pan and tilt to tilt, landing on pan \"x\", over up\n  tilt up up over down\n  boom down down, with boom\n  track left track, with tilt\n  push in push over pull\n  pull out pull over push\n  rack to pan and tilt, with pan\n  rack to boom, on track, over pull\n  start on push\n  cue pan on tilt - 1 s\n"},
}
