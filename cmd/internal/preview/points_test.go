package preview

import (
	"fmt"
	"testing"
	"time"
)

// What is pointed at in an editor lights on the page, in another shot too and again after a
// save; a pull that is clicked is told with the place of its statement.
func TestPointsGoBothWays(t *testing.T) {
	picked := make(chan string, 8)
	s := serve(t, Options{Picked: func(_ string, line, column int) { picked <- fmt.Sprint(line, ":", column) }})
	state := exampleState(t, 1, "ticket-window.pull")
	s.Show(state)
	b := newTab(t, 1440, 900)
	b.open(s)
	b.until(complete)
	key := state.Plans[0].Key
	lit := func(number int) string {
		return fmt.Sprintf(`document.querySelectorAll('.sheet > svg g.pull.near[data-number="%d"], .sheet > svg g.pull[data-number="%d"] .near').length > 0`, number, number)
	}
	s.Point(key, "12A", 2)
	b.until(lit(2))
	s.Point(key, "12B", 1)
	b.until(`document.querySelector("#shot-name").textContent.startsWith("12B")`)
	b.until(lit(1))
	again := exampleState(t, 2, "ticket-window.pull")
	s.Show(again)
	b.until(lit(1))
	s.Point(key, "12B", 0)
	b.until(`document.querySelectorAll(".sheet > svg g.pull.near").length === 0`)

	b.show(marked["pull"])
	value[any](b, fmt.Sprintf(`document.querySelector(%s).dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true }))`, "`"+marked["pull"]+"`"))
	pull := state.Plans[0].Good.Shots[1].Pulls[0]
	select {
	case got := <-picked:
		if want := fmt.Sprint(pull.Line, ":", pull.Column); got != want {
			t.Errorf("picked %s, not %s", got, want)
		}
	case <-time.After(30 * time.Second):
		t.Error("nothing was picked")
	}
}

// Only a page whose picks somebody wants to know sends them, and what it sends must be there.
func TestPicksAreChecked(t *testing.T) {
	var told []string
	s := serve(t, Options{Picked: func(file string, line, column int) { told = append(told, file) }})
	state := exampleState(t, 1, "ticket-window.pull")
	s.Show(state)
	key := state.Plans[0].Key
	for body, want := range map[string]int{
		`{"plan":"` + key + `","shot":"12A","pull":1}`:             200,
		`{"plan":"` + key + `","shot":"12A","pull":9}`:             404,
		`{"plan":"` + key + `","shot":"nowhere","pull":1}`:         404,
		`{"plan":"other","shot":"12A","pull":1}`:                   404,
		`{"plan":"` + key + `","shot":"12A","pull":1,"more":true}`: 400,
		`[]`: 400,
	} {
		if got, _ := sends(t, s, "api/pick", body); got != want {
			t.Errorf("%s: %d, not %d", body, got, want)
		}
	}
	if len(told) != 1 {
		t.Errorf("told %q", told)
	}
	quiet := serve(t, Options{})
	quiet.Show(state)
	if got, _ := sends(t, quiet, "api/pick", `{"plan":"`+key+`","shot":"12A","pull":1}`); got != 404 {
		t.Errorf("a page that nobody listens to answers %d", got)
	}
}
