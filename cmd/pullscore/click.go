// pullscore click: a track to rehearse a shot with.

package main

import (
	"fmt"
	"strconv"
	"strings"

	"pullscore/cmd/internal/export"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

type clickCmd struct {
	Output string   `offer:"places" short:"o" default:"." placeholder:"PLACE" help:"A folder, a file, or - for standard output."`
	Shot   string   `offer:"shots" placeholder:"ID" help:"The shot; may be left out where the plan has one."`
	Loop   int      `default:"1" placeholder:"N" help:"Play it so many times, 1 to 100."`
	Slow   string   `default:"100%" placeholder:"SHARE" help:"How fast, 10% to 100%; the pitch stays."`
	Beat   *float64 `placeholder:"S" help:"Seconds between ticks, 0.1 to 4; without, the plan's let beat, or half a second."`
	depsFlag
	File string `offer:"plans" arg:"" help:"A plan, or - for standard input."`
}

// Help explains the command.
func (clickCmd) Help() string {
	return `Writes a click track as WAV (48 kHz, 16 bits, one channel): four beats of
count-in, a tick every beat, a low sound where each move of the focus starts, a
high one where it lands, and between them a tone that goes up an octave as the
ring travels. Starts and landings are also markers in the file, with labels.

  pullscore click --shot 14B scene-12.pull
  pullscore click --shot 14B --slow 50% --loop 8 -o practice.wav scene-12.pull

Turn with the tone, and be there when it stops. A file is named
PLAN-SHOT-click.wav, with slow-50, loop-8 or beat-0.4 behind it where these are
asked for, so that one track does not replace another. What can be computed is played also where the plan has
errors; these go to standard error, and the exit code is then 1.`
}

// Run makes the track.
func (c *clickCmd) Run(s *session) error {
	return c.with(s, func() error { return c.track(s) })
}

// track makes the track.
func (c *clickCmd) track(s *session) error {
	opt, err := c.options()
	if err != nil {
		return err
	}
	out, err := newOutput(c.Output, "wav")
	if err != nil {
		return err
	}
	res, err := s.interpret(c.File)
	if err != nil {
		return err
	}
	faulty := s.printErrors(res, ofShot(res.Findings, c.Shot))
	shot, err := c.shot(res.Plan)
	if err != nil {
		return err
	}
	track, err := export.NewClick(shot, opt)
	if err != nil {
		return fmt.Errorf("shot %s: %w", shot.ID, err)
	}
	if err := out.write(s, c.File, shot.ID, trackName(opt), track.WriteWAV); err != nil {
		return err
	}
	if faulty {
		return errFindings
	}
	return nil
}

// options reads the flags.
func (c *clickCmd) options() (opt export.ClickOptions, err error) {
	share, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(c.Slow), "%")), 64)
	switch {
	case err != nil || !(share >= 10 && share <= 100):
		return opt, fmt.Errorf("--slow %s: give a share from 10%% to 100%%", c.Slow)
	case c.Loop < 1 || c.Loop > 100:
		return opt, fmt.Errorf("--loop %d: give a number from 1 to 100", c.Loop)
	case c.Beat != nil && !(*c.Beat >= plan.ShortestBeat && *c.Beat <= plan.LongestBeat):
		return opt, fmt.Errorf("--beat %v: give seconds from %v to %v", *c.Beat, plan.ShortestBeat, plan.LongestBeat)
	}
	opt = export.ClickOptions{Speed: share / 100, Loop: c.Loop}
	if c.Beat != nil {
		opt.Beat = *c.Beat
	}
	return opt, nil
}

// trackName is what the name of a file says of its track: how it differs from
// the plain one of the shot.
func trackName(opt export.ClickOptions) string {
	name := "click"
	if opt.Speed != 1 {
		name += "-slow-" + units.Decimal(100*opt.Speed, 3)
	}
	if opt.Loop != 1 {
		name += fmt.Sprintf("-loop-%d", opt.Loop)
	}
	if opt.Beat != 0 {
		name += "-beat-" + units.Decimal(opt.Beat, 3)
	}
	return name
}

// shot returns the shot that is asked for, or the only one.
func (c *clickCmd) shot(p *plan.Plan) (*plan.Shot, error) {
	for _, shot := range p.Shots {
		if shot.ID == c.Shot || c.Shot == "" && len(p.Shots) == 1 {
			return shot, nil
		}
	}
	if c.Shot == "" {
		return nil, fmt.Errorf("%s: name one of its shots with --shot: %s", c.File, strings.Join(shotIDs(p), ", "))
	}
	return nil, noShot(c.File, c.Shot, shotIDs(p))
}
