// pullscore page: a plan to begin from, out of a script page.

package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"iter"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/script"
	"pullscore/interp"
	"pullscore/lang"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
	"pullscore/lang/screenplay"
)

type pageCmd struct {
	Output  string  `offer:"places" short:"o" default:"-" placeholder:"PLACE" help:"The plan to write, which must not exist yet, or a folder; - is standard output."`
	As      string  `enum:"plan,json" default:"plan" placeholder:"FORM" help:"plan, or json: what was read (with --against: findings as JSON)."`
	Scene   string  `placeholder:"N" help:"One scene, by its number or else by its position from 1."`
	Against string  `offer:"plans" placeholder:"PLAN" help:"Tell what the page words differently from this plan."`
	Revised revised `placeholder:"NAME" help:"Propose only what a revision of an FDX page changed, as in --revised=Pink; without a name the one that is running."`
	Staged  bool    `help:"Write the action of each scene once, on a floor, with a shot that covers it."`
	File    string  `offer:"files" arg:"" help:"A script page in Fountain or FDX, subtitles, or - for standard input."`
}

// Help explains the command.
func (pageCmd) Help() string {
	return `Makes a plan to begin from out of a script page in Fountain or FDX: every speaker
a subject, every scene a shot, every speech a line with its words. A few racks are
proposed as comments, each with its reason: somebody speaks for the first time or
answers, or an action names them. Take "# " away to wake one up. Distances are
placeholders to measure. A kit.pull in the folder of the plan is used.

With --staged, everybody has a place on the floor of a scene instead, 1 m apart in a
row, a master covers all from 4 m, and a single of each speaker is a comment.

  pullscore page -o scene-27.pull --scene 27 ferry.fountain
  pullscore page --as json ferry.fountain
  pullscore page --against scene-27.pull --scene 27 ferry.fountain
  pullscore page --revised=Pink ferry.fdx
  pullscore page --staged -o scene-27.pull --scene 27 ferry.fountain
  pullscore page -o talk.pull interview.srt      what was said, with its pauses

A plan that is there is never written over. With --against, the exit code is 1
where lines have changed, moved or vanished; the pulls that hang on them are
told. Words are all that counts for that: the plan may lack its kit.`
}

// Run reads the page.
func (c *pageCmd) Run(s *session) error {
	src, err := s.readPage(c.File)
	if err != nil {
		return err
	}
	if isTalk(c.File) {
		return c.talk(s, src)
	}
	if err := refuse(c.File, src); err != nil {
		return err
	}
	if c.Staged && (c.Against != "" || c.Revised != (revised{}) || c.As != "plan") {
		return errors.New("--staged writes a whole plan: leave out --against, --revised and --as")
	}
	defer func() { s.bar.Clear() }()
	if c.Against != "" {
		return c.compare(s, src)
	}
	text, diags := lines.Decode(c.File, src)
	text.Progress = s.reading()
	scene, err := c.scene(text)
	if err != nil {
		return err
	}
	set, err := c.Revised.of(c.File, text)
	if err != nil {
		return err
	}
	faulty := s.printPageErrors(text, diags)
	var faults lines.Faults
	beats := screenplay.Beats(text, &faults)
	if c.As == "json" {
		err = c.write(s, func(w io.Writer) error { return script.WriteJSON(w, ofScene(beats, scene.Position)) })
	} else {
		err = c.plan(s, text, beats, scene.Position, set)
	}
	faulty = s.printPageErrors(text, faults.List()) || faulty
	if err == nil && faulty {
		err = errFindings
	}
	return err
}

// printPageErrors prints the errors of a page and reports whether there are
// any.
func (s *session) printPageErrors(text *lines.Text, diags []lang.Diagnostic) bool {
	s.bar.Clear()
	if len(diags) == 0 {
		return false
	}
	return s.printErrors(&interp.Result{Sources: map[string][]byte{text.Name: []byte(text.Content)}}, diags)
}

// mostNumbers is how many scene numbers are looked through for a near miss, and
// mostTold how many are told: a film has some hundred.
const (
	mostNumbers = 1000
	mostTold    = 20
)

// scene returns the scene that is asked for, without its beats; one at no
// position is all of them. A number goes before a position, since pages are
// spoken of by number. What stands above the first heading counts as a scene if
// somebody speaks there.
func (c *pageCmd) scene(text *lines.Text) (at fountain.Scene, err error) {
	if c.Scene == "" {
		return at, nil
	}
	position, _ := strconv.Atoi(c.Scene)
	var numbers []string
	count, last := 0, 0
	for scene, beat := range screenplay.Beats(text, &lines.Faults{}) {
		if scene.Position == last || scene.Heading == "" && beat.Who == "" {
			continue
		}
		last = scene.Position
		if count++; scene.Number != "" && strings.EqualFold(scene.Number, c.Scene) {
			return scene, nil
		}
		if count == position {
			at = scene
		}
		if scene.Number != "" && len(numbers) < mostNumbers {
			numbers = append(numbers, scene.Number)
		}
	}
	if at.Position > 0 {
		return at, nil
	}
	fault := fmt.Sprintf("%s: no scene %q among %d", c.File, c.Scene, count)
	if near, ok := lang.Nearest(c.Scene, numbers); ok {
		return at, fmt.Errorf("%s; did you mean %s?", fault, near)
	}
	if n := len(numbers); n > mostTold {
		fault += fmt.Sprintf("; they are called %s to %s", numbers[0], numbers[n-1])
	} else if n > 0 {
		fault += "; there is " + strings.Join(numbers, ", ")
	}
	return at, errors.New(fault)
}

// ofScene yields the beats of the scene at a position; of all for 0.
func ofScene(beats iter.Seq2[fountain.Scene, fountain.Beat], position int) iter.Seq2[fountain.Scene, fountain.Beat] {
	return func(yield func(fountain.Scene, fountain.Beat) bool) {
		for scene, beat := range beats {
			switch {
			case position > 0 && scene.Position > position:
				return
			case position > 0 && scene.Position < position:
			case !yield(scene, beat):
				return
			}
		}
	}
}

// plan writes the plan of scenes, which is not smaller than they are; of a revision
// only what that changed, where one is named.
func (c *pageCmd) plan(s *session, text *lines.Text, beats iter.Seq2[fountain.Scene, fountain.Beat], position int, set string) error {
	size := 0
	var cast script.Cast
	scenes := fountain.Collect(func(yield func(fountain.Scene, fountain.Beat) bool) {
		for scene, beat := range beats {
			cast.Add(&beat)
			if position > 0 && scene.Position != position {
				continue
			}
			if beat.Empty() {
				size += len("\nshot S1 \"\"\n") + len(scene.Heading)
			}
			for _, part := range beat.Parts {
				size += len(part.Text)
			}
			if size > interp.MaxFileSize || !yield(scene, beat) {
				return
			}
		}
	})
	if n, err := strconv.Atoi(c.Scene); err == nil && len(scenes) == 1 {
		scenes[0].Position = n // which is what it is called by, without a number
	}
	if size > interp.MaxFileSize {
		return fmt.Errorf("%s: that would be a plan of more than %d MB, which is as much as is read; take a scene with --scene", c.File, interp.MaxFileSize>>20)
	}
	if !slices.ContainsFunc(scenes, speaks) {
		const how = "nobody speaks there; a speech is a name in capitals, with its words on the line below"
		if !slices.ContainsFunc(scenes, func(s fountain.Scene) bool { return s.Heading != "" }) {
			return fmt.Errorf("%s: no scene, and %s", c.File, how)
		}
		s.bar.Clear()
		fmt.Fprintf(s.errs, "%s: %s\n", console.Clean(c.File), how)
	}
	from := script.Page{Title: screenplay.Title(text), Revised: set, Staged: c.Staged}
	from.File, from.Asleep = c.named()
	from.Kit = c.kit()
	plan := script.Plan(from, scenes, &cast)
	return c.write(s, func(w io.Writer) error {
		_, err := w.Write(plan)
		return err
	})
}

// place returns the file to write: in a folder it has the name of the page, with
// that of the scene behind it where one is asked for.
func (c *pageCmd) place() string {
	info, err := os.Stat(c.Output)
	if c.Output == "" || !os.IsPathSeparator(c.Output[len(c.Output)-1]) && (err != nil || !info.IsDir()) {
		return c.Output
	}
	name := planName(c.File)
	if c.Scene != "" {
		name += "-" + c.Scene
	}
	ending := files.Ext
	if c.As == "json" {
		ending = ".json"
	}
	return filepath.Join(c.Output, files.Safe(name)+ending)
}

// named returns how the plan names its page: from the folder that it is written
// to. On standard output that is not known, so the statement sleeps.
func (c *pageCmd) named() (file string, asleep bool) {
	switch {
	case c.File == files.Stdin:
		return "", false
	case c.Output == files.Stdin:
		return filepath.ToSlash(c.File), true
	}
	from, err := filepath.Abs(filepath.Dir(c.place()))
	to, errTo := filepath.Abs(c.File)
	if err != nil || errTo != nil {
		return filepath.ToSlash(c.File), true
	}
	if rel, err := filepath.Rel(from, to); err == nil {
		to = rel
	}
	return filepath.ToSlash(to), false
}

// speaks reports whether anybody speaks in a scene.
func speaks(s fountain.Scene) bool {
	return slices.ContainsFunc(s.Beats, func(b fountain.Beat) bool { return b.Who != "" })
}

// write writes to the file of -o, which must be new, or to standard output.
func (c *pageCmd) write(s *session, content func(io.Writer) error) error {
	if c.Output == files.Stdin {
		return content(s.out)
	}
	path := c.place()
	if _, err := os.Lstat(path); err == nil {
		return fmt.Errorf("%s is there already, and is not written over", path)
	} else if !errors.Is(err, fs.ErrNotExist) {
		return files.Plain(err)
	}
	if err := files.MakeFolder(filepath.Dir(path)); err != nil {
		return err
	}
	if err := files.Stream(path, content); err != nil {
		return err
	}
	_, err := fmt.Fprintln(s.out, path)
	return err
}
