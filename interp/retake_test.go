// Retakes of one plan at a time: a film that has been read is written to by nobody.

package interp_test

import (
	"bytes"
	"encoding/json"
	"reflect"
	"sync"
	"testing"

	"pullscore/interp/plan"
	"pullscore/interp/stops"
)

// Eight retakes of every shot at once come to what they come to one by one. The
// race detector looks on in `go test -race`.
func TestRetakesAtOnce(t *testing.T) {
	c := slipCorpus(t)
	retaken := 0
	changes := []stops.Change{
		{}, {Stop: 11}, {Stop: 16, Needs: true}, {Back: 0.5}, {Gear: 2}, {FocalBy: 1.2}, {SensorBy: 0.8}, {Over: map[int]float64{1: 3}},
	}
	for _, scene := range c.scenes {
		_, res := c.run(scene, nil)
		for _, sh := range res.Plan.Shots {
			alone := make([]stops.Take, len(changes))
			for i, ch := range changes {
				alone[i], _ = res.Retake(sh)(ch)
			}
			again, retake := make([]stops.Take, len(changes)), res.Retake(sh)
			var group sync.WaitGroup
			for i, ch := range changes {
				group.Go(func() { again[i], _ = retake(ch) })
			}
			group.Wait()
			for i := range changes {
				if alone[i].Shot != nil {
					retaken++
				}
				if !reflect.DeepEqual(alone[i].Faults, again[i].Faults) || !alike(t, alone[i].Shot, again[i].Shot) {
					t.Errorf("%s, shot %s, %+v: at once it is another take", scene, sh.ID, changes[i])
				}
			}
		}
	}
	if retaken < 40 {
		t.Errorf("only %d retakes could be built", retaken)
	}
}

// alike reports whether two takes are the same to the last digit.
func alike(t *testing.T, a, b *plan.Shot) bool {
	one, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	other, err := json.Marshal(b)
	if err != nil {
		t.Fatal(err)
	}
	return bytes.Equal(one, other)
}
