// Plans that a command answers about, one after the other.

package main

import (
	"errors"
	"os"
	"path/filepath"

	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// A question is what a command is asked: about plans, or one shot of them.
type question struct {
	paths []string
	shot  string // empty: all
}

// An answer is what a command says of one plan.
type answer[T any] struct {
	file  string
	plan  *plan.Plan // with the shots alone that are asked about
	diags []lang.Diagnostic
	value T
}

// answers are those about all plans, in their order.
type answers[T any] struct {
	question
	list   []answer[T]
	ids    []string // of all shots, for a near miss
	faulty []*interp.Result
}

// ask reads the plans and does work on each that has what is asked about,
// several at a time. In a folder, kits (plans without shots) are passed over.
func ask[T any](s *session, q question, work func(*interp.Result, *plan.Plan) (T, error)) (*answers[T], error) {
	type reading struct {
		answer[T]
		res *interp.Result
		ok  bool // it has what is asked about
	}
	all := &answers[T]{question: q}
	err := eachFile(s, q.paths, "reading", func(f files.File) (r reading, err error) {
		if r.res, err = s.interpret(f.Path); err != nil {
			return r, err
		}
		r.answer = answer[T]{file: f.Path, plan: r.res.Plan, diags: ofShot(r.res.Findings, q.shot)}
		r.ok = !f.InTree || len(r.plan.Shots) > 0
		if q.shot != "" {
			r.plan, r.ok = lists.Only(r.plan, q.shot)
		}
		if r.ok {
			r.value, err = work(r.res, r.plan)
		}
		return r, err
	}, func(_ files.File, r reading) error {
		all.ids = append(all.ids, shotIDs(r.res.Plan)...)
		if r.ok {
			all.list = append(all.list, r.answer)
		}
		if hasErrors(r.diags) {
			all.faulty = append(all.faulty, r.res)
		}
		return nil
	})
	return all, err
}

// single reports whether one plan was asked about by its name, so that the
// answer is about that and no list.
func (q question) single() bool {
	if len(q.paths) != 1 {
		return false
	}
	info, err := os.Stat(q.paths[0])
	return q.paths[0] == files.Stdin || err != nil || !info.IsDir()
}

// respond asks, writes what comes of it, and then the errors of the plans.
func respond[T any](s *session, q question, work func(*interp.Result, *plan.Plan) (T, error), write func(*session, *answers[T]) error) error {
	all, err := ask(s, q, work)
	if err == nil && len(all.list) > 0 {
		err = write(s, all)
	}
	if err == nil {
		err = all.end(s)
	}
	return err
}

// end prints the errors of the plans, and returns an error where there are any
// or where nothing was found that is asked about.
func (a *answers[T]) end(s *session) error {
	for _, res := range a.faulty {
		s.printErrors(res, ofShot(res.Findings, a.shot))
	}
	where := "the plans"
	if a.single() {
		where = filepath.Clean(a.paths[0])
	}
	switch {
	case len(a.list) == 0 && !s.failed && a.shot != "":
		return noShot(where, a.shot, a.ids)
	case len(a.faulty) > 0:
		return errFindings
	case len(a.list) == 0 && !s.failed:
		return errors.New("none of the plans has shots")
	}
	return nil
}

// writeEach writes what was asked of plans: as JSON, that of several with their files,
// as filed joins the two; else as the text that write makes of all.
func writeEach[T, F any](s *session, all *answers[T], as string, filed func(file string, value T) F, write func([]T) error) error {
	var values []T
	var list []F
	for _, a := range all.list {
		values, list = append(values, a.value), append(list, filed(a.file, a.value))
	}
	switch {
	case as == "json" && all.single():
		return findings.Encode(s.out, values[0])
	case as == "json":
		return writePlans(s, list)
	}
	return write(values)
}

// writePlans writes what is said of several plans as JSON, by the promise to
// scripts.
func writePlans[T any](s *session, list []T) error {
	return findings.Encode(s.out, struct {
		Plans []T `json:"plans"`
	}{list})
}
