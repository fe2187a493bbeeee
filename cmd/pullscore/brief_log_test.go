package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"pullscore/interp"
	"pullscore/interp/takes"
)

// crossing is an example with racks, a follow and units imperial.
const crossing = "../../examples/crossing.pull"

// fill fills in the form of a shot as somebody does: it types and taps.
const fill = `
const form = document.querySelector('form.log[data-shot="%s"]');
const set = pull => form.querySelector('fieldset[data-pull="' + pull + '"]');
const write = (pull, name, text) => { set(pull).querySelector('[name="' + name + '"]').value = text; };
const tap = (pull, word) => set(pull).querySelector('input[value="' + word + '"]').click();
const press = (pull, word) => set(pull).querySelector('button[value="' + word + '"]').click();
const keep = () => form.querySelector('button[type=submit]').click();
`

// A log that is filled in on a phone comes out as a CSV file that takes reads: each row has
// its pull, a landing is fitted, a row without one counts, and commas and quotes in a note
// stay in it.
func TestLogOfTheBriefIsRead(t *testing.T) {
	tab := openBrief(t, briefOf(t, "html", crossing))
	if err := chromedp.Do(tab, chromedp.EmulateViewport(390, 844)); err != nil {
		t.Fatal(err)
	}
	text, err := chromedp.Run(tab, chromedp.Evaluate[string](fmt.Sprintf(fill, "55-B")+`
		document.querySelector('.log-send [name=puller]').value = 'Orsa';
		document.querySelector('.log-send [name=date]').value = '2026-03-01';
		write(1, 'landed', "3'3\""); write(1, 'time_s', '0,9'); tap(1, 'sharp'); write(1, 'note', 'calm, "good"');
		tap(3, 'late');
		keep();
		write(1, 'landed', '121 deg'); write(1, 'time_s', '0.8'); tap(1, 'early');
		keep();
		write(1, 'landed', '99'); keep(); /* no unit: the form refuses it */
		write(1, 'landed', '99 cm'); keep(); /* no time: likewise */
		write(1, 'landed', ''); keep();
		new Promise(done => {
			const made = URL.createObjectURL;
			URL.createObjectURL = blob => { blob.text().then(text => done(blob.name + '\n' + text)); return made(blob); };
			navigator.canShare = undefined;
			document.querySelector('.log-send [name=share]').click(); /* a browser that cannot share saves */
		})`, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(err)
	}
	name, csv, _ := strings.Cut(text, "\n")
	if name != "crossing.takes.csv" {
		t.Errorf("the file is called %q", name)
	}
	want := `plan,shot,pull,take,landed,time_s,hit,result,puller,date,note
crossing,55-B,1,1,"3'3""",0.9,yes,sharp,Orsa,2026-03-01,"calm, ""good"""
crossing,55-B,3,1,,,no,late,Orsa,2026-03-01,
crossing,55-B,1,2,121 deg,0.8,no,early,Orsa,2026-03-01,
`
	if csv != want {
		t.Errorf("the log is\n%swant\n%s", csv, want)
	}
	src, err := os.ReadFile(crossing)
	if err != nil {
		t.Fatal(err)
	}
	plan := interp.Interpret(crossing, src, interp.Options{}).Plan
	var list []takes.Take
	faults, err := takes.ReadLog(takes.NewReader(strings.NewReader(csv), name, plan), func(take takes.Take) { list = append(list, take) })
	if err != nil || faults.N+faults.Unplaced > 0 || len(list) != 3 {
		t.Fatalf("%d takes, %d faults, %v", len(list), faults.N+faults.Unplaced, err)
	}
	if !list[1].Unmeasured || list[1].Hit != takes.Missed || list[0].Unmeasured || list[0].Hit != takes.Sharp || list[0].Note != `calm, "good"` {
		t.Errorf("%+v", list)
	}
}

// What is kept stays in the browser, can be taken away row by row, and the command takes
// fits the file.
func TestLogOfTheBriefIsKept(t *testing.T) {
	tab := openBrief(t, briefOf(t, "html", crossing))
	got, err := chromedp.Run(tab, chromedp.Evaluate[[]string](fmt.Sprintf(fill, "55-A")+`
		for (let i = 0; i < 3; i++) { tap(1, i === 1 ? 'buzz' : 'sharp'); keep(); }
		const kept = form.querySelectorAll('.kept p').length, said = document.querySelector('.log-send .rows').textContent;
		form.querySelector('.kept button').click();
		const stored = JSON.parse(localStorage.getItem('log of takes: ' + document.title));
		press(1, 'early'); press(1, 'late'); form.elements.undo.click(); /* one tap is a row, and can be taken back */
		const tapped = JSON.parse(localStorage.getItem('log of takes: ' + document.title)).slice(2).map(r => r.take + r.hit + r.result).join(' ');
		[String(kept), said, tapped, stored.map(r => r.take + r.result).join(' '), form.elements.take.value, String(document.querySelectorAll('.log-off').length)]`))
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{"3", "3 rows kept.", "4noearly", "2buzz 3sharp", "5", "0"}; strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("%q, want %q", got, want)
	}
	log := filepath.Join(t.TempDir(), "crossing.takes.csv")
	csv := "plan,shot,pull,take,landed,time_s,hit,result,puller,date,note\n"
	for i := range 12 {
		csv += fmt.Sprintf("crossing,55-B,1,%d,%s,1.2,y,,Orsa,2026-03-01,\ncrossing,55-B,2,%d,,,n,early,Orsa,2026-03-01,\n", i+1, []string{"99 cm", "3'3\"", "98.6 cm"}[i%3], i+1)
	}
	if err := os.WriteFile(log, []byte(csv), 0o644); err != nil {
		t.Fatal(err)
	}
	var out, errs bytes.Buffer
	if code := run([]string{"takes", "--plan", crossing, log}, strings.NewReader(""), &out, &errs); code != exitFine {
		t.Fatalf("exit code %d: %s", code, &errs)
	}
	if !strings.Contains(out.String(), "24 takes") {
		t.Errorf("takes says\n%s", &out)
	}
}
