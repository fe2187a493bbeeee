// The kit of a new plan: a file kit.pull beside it.

package main

import (
	"path/filepath"

	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/script"
	"pullscore/interp"
	"pullscore/lang"
)

// kitName is the file that is looked for.
const kitName = "kit" + files.Ext

// kitStops are the stops that are tried with a lens, in this order: common ones.
var kitStops = []string{"f/4", "T4", "f/5.6", "T5.6", "f/2.8", "T2.8"}

// kit returns the kit that lies in the folder of the plan to write, with its first
// camera and the first of its lenses that this camera can take a shot with. It is none
// where there is no such file, or where the plan goes to standard output.
func (c *pageCmd) kit() script.Kit {
	if c.Output == files.Stdin {
		return script.Kit{}
	}
	folder := filepath.Dir(c.place())
	src, err := interp.ReadFile(filepath.Join(folder, kitName))
	if err != nil {
		return script.Kit{}
	}
	kit, _ := lang.Parse(kitName, src)
	var camera string
	var lenses []string
	for _, section := range kit.Sections {
		switch head := section.Head.(type) {
		case *lang.Camera:
			if camera == "" && head.Name != nil {
				camera = head.Name.Text
			}
		case *lang.Lens:
			if head.Name != nil {
				lenses = append(lenses, head.Name.Text)
			}
		}
	}
	for _, lens := range lenses {
		for _, stop := range kitStops {
			k := script.Kit{File: kitName, Camera: camera, Lens: lens, Stop: stop}
			if serves(folder, k) {
				return k
			}
		}
	}
	return script.Kit{}
}

// serves reports whether a shot can be taken with a kit.
func serves(folder string, k script.Kit) bool {
	plan := "plan \"Kit\"\n" + k.Setup() + "subject SOMEBODY at 2 m\nshot 1\n  start on SOMEBODY\n  lasts 1 s\n"
	res := interp.Interpret(filepath.Join(folder, "page"+files.Ext), []byte(plan), interp.Options{ReadFile: interp.ReadFile})
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			return false
		}
	}
	return true
}
