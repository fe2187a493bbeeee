// pullscore brief: the crew papers of plans in one printable file.

package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/files"
	"pullscore/interp"
	"pullscore/interp/coverage"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/render/brief"
	coveragepaper "pullscore/render/coverage"
	"pullscore/render/draw"
	"pullscore/render/fonts"
	"pullscore/render/html"
	"pullscore/render/pdf"
	"pullscore/render/sheet"
	stopspaper "pullscore/render/stops"
)

type briefCmd struct {
	As    string `enum:"pdf,html" default:"pdf" placeholder:"FORM" help:"The form of the file: pdf or html."`
	Paper string `enum:"a4,letter,A4,Letter" default:"a4" placeholder:"SIZE" help:"The sheet, lying: a4 or letter."`
	fontFlag
	depsFlag
	Stops  bool     `help:"Also the window of stops of every shot."`
	Output string   `offer:"places" short:"o" default:"." placeholder:"PLACE" help:"A folder, the file, or - for standard output."`
	Paths  []string `offer:"plans" arg:"" name:"path" sep:"none" help:"Plans, folders of plans, or - for standard input."`
}

// Help explains the command.
func (briefCmd) Help() string {
	return `Puts the crew papers of a scene, or of a folder of scenes, into one file to
print: a cover with the kit, the cautions that apply and the shots with what is
worst in each and the page of each; then for every shot its score, the tapes and
discs of its ring in their true size, its floor, how far everybody may miss
their mark, a log of takes to fill in, and what no drawing shows in words.
Before the shots of a scene whose cameras have places on its floor come the
floor of all of them, its marks, a card with every tape and boxes for what it
reads, and the coverage of the scene.

  pullscore brief scene-12.pull                    scene-12-brief.pdf in this folder
  pullscore brief -o papers scene-12.pull          the same in the folder papers
  pullscore brief -o ferry.pdf scenes              every plan of a folder
  pullscore brief --as html -o ferry.html scenes   one file for a phone, offline
  pullscore brief --stops scene-12.pull            with the window of stops

The file for a phone has the log as a form. What is filled in stays in the
browser, and goes out as the CSV file that takes reads.

--stops also draws in which stops each shot holds. Every shot is computed anew
at each stop for it, so a brief of many long shots then takes its time.

Without a name the file has that of the plan, or of the folder; one of that name
is written anew. Print at 100 %, without fitting to the page, and measure the 50 mm bar.

What can be computed is printed also where the plan has errors; these go to
standard error, and the exit code is then 1.`
}

// Run writes the brief.
func (c *briefCmd) Run(s *session) error {
	return c.with(s, func() error { return c.brief(s) })
}

// brief writes the brief.
func (c *briefCmd) brief(s *session) error {
	s.rule.from(c.Font...)
	out, err := c.place()
	if err != nil {
		return err
	}
	// Hundreds of sheets are drawn and let go: here memory is dearer than time.
	defer debug.SetGCPercent(debug.SetGCPercent(briefGarbage))
	list, err := c.fontFlag.read(c.As)
	if err != nil {
		return err
	}
	all, faulty, err := c.read(s)
	switch {
	case err != nil:
		return err
	case len(all.plans) > 0:
		all.fonts = list
		err = c.write(s, all, out)
	case !s.failed && !faulty:
		err = errors.New("none of the plans has shots, so there is nothing to put into a brief")
	}
	if err == nil && faulty {
		err = errFindings
	}
	return err
}

// place reads where the file goes: it has a name of its own in a folder.
func (c *briefCmd) place() (output, error) {
	out, err := newOutput(c.Output, c.As)
	switch {
	case err != nil:
		return out, err
	case out.file == "":
		out.file = filepath.Join(out.folder, files.Safe(briefName(c.Paths))+"-brief."+c.As)
	case out.file != files.Stdin && !strings.EqualFold(filepath.Ext(out.file), "."+c.As): // one that is there
		return out, fmt.Errorf("-o %s: the file of a brief as %s is named .%[2]s", out.file, c.As)
	}
	return out, nil
}

// briefName is the plan's, where there is one, else that of the folder that
// holds the first.
func briefName(args []string) string {
	folder := args[0]
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		if len(args) == 1 {
			return planName(folder)
		}
		folder = filepath.Dir(folder)
	}
	if whole, err := filepath.Abs(folder); err == nil { // "." has no name
		folder = whole
	}
	return filepath.Base(folder)
}

// briefGarbage is how much the heap may grow between collections, in percent.
const briefGarbage = 60

// A briefing is what a brief is made of.
type briefing struct {
	plans   []*plan.Plan
	windows map[*plan.Shot]*stops.Answer // where they are asked for
	opt     sheet.Options
	fonts   []*fonts.File
}

// placed draws the papers of a shot at its place in the brief.
func (b *briefing) placed(p placedShot) (brief.Shot, error) {
	var more []brief.Figure
	if a := b.windows[p.shot]; a != nil {
		more = append(more, brief.Figure{Name: "Stops", Pages: stopspaper.Stops(p.shot, a, b.opt)})
	}
	id := fmt.Sprintf("s%d-%d", p.scene, p.number)
	shot := brief.NewShot(p.shot, id, b.opt, more...)
	if i, ok := brief.SceneBefore(p.plan, p.shot); ok {
		shot.Before = brief.NewScene(p.plan, i, id+"-scene", b.opt,
			brief.Figure{Name: "Coverage", Pages: coveragepaper.Coverage(coverage.Staged(p.plan, i, true), b.opt)})
	}
	return shot, nil
}

// read interprets the plans and keeps those that have shots; faulty tells that
// one has errors.
func (c *briefCmd) read(s *session) (all *briefing, faulty bool, err error) {
	all = &briefing{
		windows: map[*plan.Shot]*stops.Answer{},
		opt:     sheet.Options{Paper: papers[strings.ToLower(c.Paper)]},
	}
	type reading struct {
		*interp.Result
		windows []*stops.Answer // of its shots
	}
	err = eachFile(s, c.Paths, "reading", func(f files.File) (r reading, err error) {
		if r.Result, err = s.interpret(f.Path); err == nil {
			r.TryTogether(r.Plan.Shots)
		}
		if err == nil && c.Stops {
			for _, shot := range r.Plan.Shots {
				r.windows = append(r.windows, windowOf(r.Result, shot))
			}
		}
		return r, err
	}, func(_ files.File, r reading) error {
		faulty = s.printErrors(r.Result, r.Findings) || faulty
		if len(r.Plan.Shots) > 0 {
			all.plans = append(all.plans, r.Plan)
		}
		for i, a := range r.windows {
			all.windows[r.Plan.Shots[i]] = a
		}
		return nil
	})
	return all, faulty, err
}

// write draws the papers, writes the file and tells its name.
func (c *briefCmd) write(s *session, all *briefing, out output) error {
	compose := briefPDF
	if c.As == "html" {
		compose = briefHTML
	}
	parts, err := compose(s, all)
	if err != nil {
		return err
	}
	if out.file == files.Stdin {
		_, err := s.out.Write(bytes.Join(parts, nil))
		return err
	}
	if err := out.put(out.file, parts...); err != nil {
		return err
	}
	return s.wrote(out.file)
}

// A placed shot is one with its place in the brief; numbers count from 1.
type placedShot struct {
	plan          *plan.Plan
	shot          *plan.Shot
	scene, number int
}

// eachShot does work on every shot of the plans, several at a time, and calls
// emit in their order. A bar shows how far it is.
func eachShot[T any](s *session, plans []*plan.Plan, work func(placedShot) (T, error), emit func(placedShot, T) error) error {
	var shots []placedShot
	for i, p := range plans {
		for k, shot := range p.Shots {
			shots = append(shots, placedShot{p, shot, i + 1, k + 1})
		}
	}
	type done struct {
		shot  placedShot
		value T
		err   error
	}
	s.bar = console.NewProgress(s.errScreen, "drawing", len(shots))
	defer func() { s.bar.Clear() }()
	return files.InOrder(shots, func(p placedShot) done {
		value, err := work(p)
		return done{p, value, err}
	}, func(d done) error {
		if d.err != nil {
			return d.err
		}
		s.bar.Step()
		return emit(d.shot, d.value)
	})
}

// briefPDF returns the file in parts. The cover names pages that come after it, and every
// foot the number of all: room is kept for both, and they are drawn last.
func briefPDF(s *session, all *briefing) ([][]byte, error) {
	title := brief.Title(all.plans)
	file := pdf.New(pdf.Info{Title: title, Desc: "Crew papers.", Language: language, Fonts: all.fonts})
	cover := func(where brief.Places) []*draw.Page {
		return brief.CoverPages(title, brief.Cover(all.plans, where), all.opt)
	}
	file.Mark("Cover", 0)
	var backs []string // what the number of each page leads to
	for _, p := range cover(nil) {
		file.Add(&draw.Page{W: p.W, H: p.H})
		backs = append(backs, "")
	}
	lacking, titles, where := []rune(nil), brief.Titles(all.plans), brief.Places{}
	err := eachShot(s, all.plans, all.placed, func(p placedShot, b brief.Shot) error {
		if p.number == 1 {
			file.Mark(titles[p.scene-1], 0)
		}
		at := b.Place
		add := func(name string, figures []brief.Figure) {
			file.Mark(name, 1)
			for _, f := range figures {
				for i, page := range f.Pages {
					if i == 0 {
						file.Mark(f.Name, 2)
					}
					file.Add(page)
					backs = append(backs, at.Row)
				}
				lacking = append(lacking, fonts.Faces(all.fonts).Lacking(f.Pages...)...)
			}
		}
		if b.Before != nil {
			add(b.Before.Title, b.Before.Figures)
		}
		at.Page, at.ID = len(backs)+1, b.First()
		where[p.shot] = at
		add(b.Name, b.Figures)
		return nil
	})
	if err != nil {
		return nil, err
	}
	for i, p := range cover(where) {
		file.Over(i+1, p)
		lacking = append(lacking, fonts.Faces(all.fonts).Lacking(p)...)
	}
	size := all.opt.Size()
	for i, back := range backs {
		number := &draw.Page{W: size.W, H: size.H}
		brief.NumberPage(number, i+1, len(backs), back)
		file.Over(i+1, number)
	}
	s.noteLacking(lacking, "--as html shows them in the fonts of the system")
	var buf bytes.Buffer
	err = file.Write(&buf)
	return [][]byte{buf.Bytes()}, err
}

// briefHTML returns the file in parts.
func briefHTML(s *session, all *briefing) ([][]byte, error) {
	parts, titles, where := [][]byte{nil}, brief.Titles(all.plans), brief.Places{}
	type done struct {
		part  []byte
		place brief.Place
	}
	err := eachShot(s, all.plans, func(p placedShot) (done, error) {
		var b bytes.Buffer
		papers, err := all.placed(p)
		if err == nil {
			err = html.WriteShot(&b, titles[p.scene-1], p.number == 1, p.shot, papers)
		}
		return done{bytes.Clone(b.Bytes()), papers.Place}, err // without the room that the buffer keeps
	}, func(p placedShot, d done) error {
		parts, where[p.shot] = append(parts, d.part), d.place
		return nil
	})
	if err != nil {
		return nil, err
	}
	var head, foot bytes.Buffer
	if err := html.WriteHead(&head, brief.Title(all.plans), all.plans, where, html.Options{Language: language, Paper: all.opt.Paper}); err != nil {
		return nil, err
	}
	parts[0] = head.Bytes()
	err = html.WriteFoot(&foot)
	return append(parts, foot.Bytes()), err
}
