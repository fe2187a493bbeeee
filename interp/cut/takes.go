// The takes of a shot: which of its events are of which.
//
// The name of a clip or its statement says it best. Next comes the row of a list of clips
// that has the reel or the name, and whose source holds the event. Where neither says
// anything, events of one name and reel are of one take while their sources lie near: a
// shot of so many seconds cannot have been taken twice within less. How near that is comes
// from five real lists, where gaps within one take, as the names tell, have medians of 3 to
// 13 s, 95 % lie under 170 s, and the longest is 597 s. So it is a guess, and told.

package cut

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/edit"
)

// setUp is how long a new take needs beside the shot itself, in seconds.
const setUp = 60

// tellTakes says of each event which take it is of, and reports whether some are told
// apart by their source alone.
func tellTakes(events []edit.Piece, a *Asked) (guessed bool) {
	for i := range events {
		look(&events[i], a)
	}
	return guess(events, a)
}

// look looks for an event in the lists of clips: how far the source of its clip goes, and
// if nothing else says it, which take it is.
func look(e *edit.Piece, a *Asked) {
	for _, log := range a.Logs {
		for i := range log.Rows {
			row := &log.Rows[i]
			from, to, ok := e.Logged(row, a.Speed.Rate)
			if ok && e.To == 0 {
				e.From, e.To = from, to
			}
			if ok && e.Take == "" {
				e.Take = row.Take
			}
			if e.To > 0 && e.Take != "" {
				return
			}
		}
	}
}

// guess tells events without a take apart by their source: of one name and reel, those
// whose gap is longer than the shot and a new set-up are of different takes. A take that
// is told so is called by where its source begins.
func guess(events []edit.Piece, a *Asked) (guessed bool) {
	groups := map[[2]string][]*edit.Piece{}
	for i := range events {
		if e := &events[i]; e.Take == "" {
			key := [2]string{edit.Bare(e.Name), edit.Fold(e.Reel)}
			groups[key] = append(groups[key], e)
		}
	}
	for _, group := range groups {
		slices.SortStableFunc(group, func(x, y *edit.Piece) int { return cmp.Compare(x.SourceIn, y.SourceIn) })
		var runs [][]*edit.Piece
		end := math.Inf(-1)
		for _, e := range group {
			from, to := source(e, a)
			if from-end > a.Long+setUp {
				runs = append(runs, nil)
			}
			runs[len(runs)-1] = append(runs[len(runs)-1], e)
			end = max(end, to)
		}
		if len(runs) < 2 {
			continue
		}
		guessed = true
		for _, run := range runs {
			for _, e := range run {
				e.Take = a.Speed.Rate.Format(run[0].SourceIn)
			}
		}
	}
	return guessed
}

// source returns the part of the source that an event shows, in seconds.
func source(e *edit.Piece, a *Asked) (from, to float64) {
	in := a.Speed.Rate.Seconds(e.SourceIn)
	out := in + a.Speed.Rate.Seconds(e.RecordOut-e.RecordIn)*e.Speed
	return min(in, out), max(in, out)
}

// Taken returns the clips of other names than the shot's that show it, with their takes,
// each once: "27A-3, take 3".
func (s *Shot) Taken() (list []string) {
	for i := range s.Events {
		e := &s.Events[i]
		text := e.Name
		if e.Take != "" {
			text += ", take " + e.Take
		}
		if !e.Named && !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	return list
}

// findMissing finds the statements that name no clip, and names that resemble the shot.
func (s *Shot) findMissing(a *Asked) {
	if !s.Lists {
		return
	}
	for _, c := range a.Clips {
		has := func(f *File) bool { return f.IsList && f.Has(c.Ask) }
		if !slices.ContainsFunc(a.Cuts, has) {
			s.Missing = append(s.Missing, c)
		}
	}
	if s.List != nil && len(s.Missing) == 0 {
		return
	}
	for _, f := range a.Cuts {
		if len(s.Near) == 0 && f.IsList {
			s.Near = f.Near(a.ID)
		}
	}
}
