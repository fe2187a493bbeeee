// --revised: one revision of a page alone.

package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/alecthomas/kong"

	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/screenplay"
)

// revised is a revision that is asked for by its name, or without one the set that
// is running.
type revised struct {
	asked bool
	name  string
}

// IsBool tells kong that the flag may stand without a value.
func (*revised) IsBool() bool { return true }

// Decode reads the value: what stands behind an equals sign, or the next word if it
// can be no file.
func (r *revised) Decode(ctx *kong.DecodeContext) error {
	r.asked = true
	next := ctx.Scan.Peek()
	word, ok := next.Value.(string)
	if ok && (next.Type == kong.FlagValueToken || next.InferredType() == kong.UntypedToken && filepath.Ext(word) == "") {
		ctx.Scan.Pop()
		r.name = word
	}
	return nil
}

// of returns the name of the revision in a page; empty where none is asked for.
func (r *revised) of(path string, text *lines.Text) (name string, err error) {
	if !r.asked {
		return "", nil
	}
	history, ok := screenplay.Revisions(text)
	if !ok {
		return "", fmt.Errorf("%s: a page in Fountain does not tell its revisions; FDX does", path)
	}
	var names []string
	for _, s := range history.Sets {
		if s.Name == "" {
			continue
		}
		if r.name != "" && strings.EqualFold(s.Name, r.name) || r.name == "" && s.Number == history.Active {
			return s.Name, nil
		}
		names = append(names, s.Name)
	}
	fault := fmt.Sprintf("%s: no revision %q", path, r.name)
	if r.name == "" {
		fault = path + ": no revision is running"
	}
	if near, ok := lang.Nearest(r.name, names); ok {
		return "", fmt.Errorf("%s; did you mean %s?", fault, near)
	}
	if len(names) > 0 {
		fault += "; there is " + strings.Join(names, ", ")
	}
	return "", errors.New(fault)
}
