// Package film makes the plans of a whole feature film, of a world that does
// not exist, to test and to measure with: as many files, lines and pulls as a
// long shoot has. The same seed gives the same film.
package film

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
)

// The size of a feature film: a scene is a file of so many lines, with so many
// pulls over its shots.
const (
	Scenes        = 120
	LinesPerScene = 250
	ShotsPerScene = 10
	PullsPerShot  = 5
	PullsPerScene = ShotsPerScene * PullsPerShot
)

// kit is what all scenes use.
const kit = `# The cameras and lenses of the ferry film.
camera A
  sensor 24.89 x 18.66 mm
  records 3840 px
  on tripod
  iso 800
  shutter 180 deg

camera B
  sensor 24.89 x 18.66 mm
  records 3840 px
  on dolly
  iso 800
  shutter 180 deg

lens "50"
  focal 50 mm
  stops f/1.8 to f/21
  closest 60 cm
  ring 300 deg, diameter 110 mm

lens "75"
  focal 75 mm
  stops T1.9 to T22
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
  mark 75 cm at 0 deg
  mark 1 m at 118 deg
  mark 2 m at 240 deg
  mark 5 m at 290 deg
  mark inf at 310 deg

puller NEVO
  hand 4.4 bit/s
  grip 120 deg
`

var (
	people = []string{"ILKA", "DOVREN", "SATTA", "MERROW", "OSK"}
	things = []string{"TICKET", "LANTERN", "HATCH", "LEDGER"}
	lenses = []string{"50", "75"}
	stops  = []string{"2.8", "4", "5.6", "8"}
	// weighty are the words that moves hang on: each once in a shot.
	weighty = []string{"harbour", "yesterday", "nobody", "letters", "tomorrow", "captain", "silver", "winter", "promise", "engine"}
	openers = []string{"You never told me about the", "There was something in the", "I have been waiting for the", "We should not have gone near the", "Somebody must have seen the"}
	closers = []string{"and you know it.", "before the tide turned.", "while the others slept.", "or so they say in town.", "and then the bell rang twice."}
	reasons = []string{"she understands", "he is caught", "the bell is heard", "it was there all along", "nobody answers"}
)

// Write makes the film's files in the folder: kit.pull, and one file a scene
// in folders of ten. It returns the paths of the scenes.
func Write(dir string, seed uint64, scenes int) ([]string, error) {
	if err := os.WriteFile(filepath.Join(dir, "kit.pull"), []byte(kit), 0o666); err != nil {
		return nil, err
	}
	var list []string
	for n := 1; n <= scenes; n++ {
		reel := filepath.Join(dir, fmt.Sprintf("reel-%02d", (n+9)/10))
		if err := os.MkdirAll(reel, 0o777); err != nil {
			return nil, err
		}
		path := filepath.Join(reel, fmt.Sprintf("scene-%03d.pull", n))
		if err := os.WriteFile(path, []byte(Scene(seed, n)), 0o666); err != nil {
			return nil, err
		}
		list = append(list, path)
	}
	return list, nil
}

// Scene returns the text of one scene.
func Scene(seed uint64, number int) string {
	s := &scene{rnd: rand.New(rand.NewPCG(seed, uint64(number))), number: number}
	s.head()
	for i := range ShotsPerScene {
		s.shot(i)
	}
	for n := s.lines; n < LinesPerScene; n++ {
		s.add("# %d: see the continuity sheet of the day", n)
	}
	return s.text.String()
}

type scene struct {
	rnd    *rand.Rand
	number int
	text   strings.Builder
	lines  int
}

func (s *scene) add(format string, args ...any) {
	fmt.Fprintf(&s.text, format+"\n", args...)
	s.lines++
}

func (s *scene) pick(list []string) string { return list[s.rnd.IntN(len(list))] }

// head writes what holds for the scene.
func (s *scene) head() {
	s.add("plan \"The last ferry, scene %d\"", s.number)
	s.add("rate 24")
	s.add("watched on 12 m screen from 18 m")
	s.add("pace %d wpm", 130+s.rnd.IntN(40))
	s.add("use \"../kit.pull\"")
	s.add("")
	for i, who := range people {
		s.add("subject %s at %d cm, deep 4 cm", who, 150+i*70+s.rnd.IntN(50))
	}
	for i, what := range things {
		s.add("subject %s at %d cm, %d cm left", what, 110+i*60+s.rnd.IntN(40), 10+s.rnd.IntN(40))
	}
	s.add("let beat = %.1f s", 0.4+0.1*float64(s.rnd.IntN(8)))
	s.add("")
}

// shot writes a shot of five exchanges, each with a pull: four racks, and a follow of
// one who walks. It has 23 lines. The focus rests after each on one who sways.
func (s *scene) shot(index int) {
	s.add("shot %d%c \"Set-up %d\"", s.number, 'A'+index, index+1)
	s.add("  with camera %c, lens %q, stop f/%s, puller NEVO", 'A'+index%2, s.pick(lenses), s.pick(stops))
	s.add("  start on %s", people[0])
	words := s.rnd.Perm(len(weighty))
	focus := people[0]
	for n := range PullsPerShot {
		target := s.other(focus)
		if n == PullsPerShot-1 {
			target = focus // whom it is on walks, and is followed
		}
		s.exchange(n, weighty[words[2*n]], weighty[words[2*n+1]], target)
		focus = target
	}
}

// other returns somebody or something that the focus is not on.
func (s *scene) other(focus string) string {
	for {
		who := s.pick(people)
		if s.rnd.IntN(3) == 0 {
			who = s.pick(things)
		}
		if who != focus {
			return who
		}
	}
}

// exchange writes two lines, a pull in one of the ways that it can be asked
// for, and a pause that it has landed by; the last is a walk that is followed.
func (s *scene) exchange(n int, first, second, target string) {
	one, two := s.pick(people[:2]), s.pick(people[2:])
	s.add("  %s: \"%s %s %s\"", one, s.pick(openers), first, s.pick(closers))
	s.add("  %s: \"%s %s %s\", lasting 3.5 s", two, s.pick(openers), second, s.pick(closers))
	switch n {
	case 0:
		s.add("  rack to %s, landing on %q, over 1.%d s, because %q", target, second, s.rnd.IntN(6), s.pick(reasons))
	case 1:
		s.add("  rack to %s, on end of %s - 0.4 s, over 1.2 s, even", target, two)
	case PullsPerShot - 1:
		s.add("  %s moves to %d cm over 2.%d s", target, 160+s.rnd.IntN(300), s.rnd.IntN(9))
		s.add("  follow %s", target)
		return
	case 2:
		s.add("  rack to %s, because %q # as short as it can be", target, s.pick(reasons))
	default:
		s.add("  rack to %s, on %q, over 1.%d s", target, second, s.rnd.IntN(9))
	}
	s.add("  pause %d * beat", 3+s.rnd.IntN(3))
}
