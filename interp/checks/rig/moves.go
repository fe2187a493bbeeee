// The moves of the camera that the checks look at.

package rig

import (
	"pullscore/interp/checks/check"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// rigged reports whether the camera turns or leaves its axis.
func rigged(b *check.Shot) bool { return b.Plan.Optics.Rig != nil }

// A turn is a pan, a tilt or both at once, by one statement.
type turn struct {
	*stage.Move
	kinds string // pan, tilt, or pan and tilt
	with  bool   // it stays with somebody
}

// turnsOf returns the turns of a shot in the order in which they are written.
func turnsOf(b *check.Shot) (list []turn) {
	at := map[lang.Statement]int{}
	for _, m := range b.Stage.Moves {
		if m.Kind != "pan" && m.Kind != "tilt" {
			continue
		}
		if i, ok := at[m.Stmt]; ok {
			list[i].kinds = "pan and tilt"
			continue
		}
		at[m.Stmt] = len(list)
		list = append(list, turn{m, m.Kind, m.Keeps})
	}
	return list
}

// does returns what whoever turns the camera does.
func (t turn) does() string {
	switch t.kinds {
	case "pan":
		return "pans"
	case "tilt":
		return "tilts"
	}
	return "pans and tilts"
}
