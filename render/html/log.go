// The log of takes as a form: what the paper has as columns to fill in, a phone has as
// fields, and sends it as the CSV file that the command takes reads.

package html

import (
	_ "embed"
	"fmt"
	"path/filepath"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/cards"
	"pullscore/render/sheet"
)

// script keeps the takes and makes the CSV. It asks nothing of a network.
//
//go:embed log.js
var script string

// logOff says what to do where scripts do not run, as in the preview of a mail program.
const logOff = "<p class=\"log-off\">To fill in the log, open this file in a browser.</p>\n"

// collected writes where the takes of all shots come together. The script fills it.
func (w writer) collected(plans []*plan.Plan) {
	name := "takes"
	if len(plans) == 1 && plans[0].File != "" {
		name = strings.TrimSuffix(filepath.Base(filepath.ToSlash(plans[0].File)), ".pull")
	}
	w.markup("<section class=\"words log-all screen\" id=\"log\" data-file=\"%s\">\n<h2>Log of takes</h2>\n"+logOff, name+".takes.csv")
	w.markup(`<form class="log-send" hidden>
<p>Every shot has a form below its papers. The takes stay in this browser until you clear them. The file is read by pullscore takes.</p>
<p class="fields"><label>Puller <input name="puller" autocomplete="off"></label> <label>Date <input name="date" type="date"></label></p>
<p class="rows" role="status">No takes yet.</p>
<p><button type="button" name="share">Send</button> <button type="button" name="save">Save as CSV</button> <button type="button" name="copy">Copy</button> <button type="button" name="clear">Clear</button></p>
</form>
</section>
`)
}

// log writes the form of a shot; nothing if no pull has a column in its log.
func (w writer) log(s *plan.Shot, name string) {
	pulls := cards.Logged(s)
	if len(pulls) == 0 {
		return
	}
	w.markup("<div class=\"screen\">\n<h4>Log of takes</h4>\n"+logOff+"<form class=\"log\" data-plan=\"%s\" data-shot=\"%s\" hidden>\n", cards.PlanWord(s), s.ID)
	w.markup("<p class=\"fields\"><label>Take <input name=\"take\" inputmode=\"numeric\" value=\"1\" size=\"4\" autocomplete=\"off\"></label></p>\n")
	for _, p := range pulls {
		w.pull(s, p)
	}
	w.markup("<p><button type=\"button\" name=\"undo\">Undo the last tap</button> <button type=\"submit\">Keep what is filled in</button> <a href=\"#log\">Send the log</a></p>\n" +
		"<div class=\"kept\" role=\"status\"></div>\n</form>\n</div>\n")
}

// results are the words of a log for how a take went, with what they mean.
var results = []struct{ word, tap, means string }{
	{"sharp", "Sharp", "sharp"}, {"early", "Early", "− early"}, {"late", "Late", "+ late"}, {"buzz", "Buzz", "soft, neither"},
}

// pull writes the fields of a pull. A follow lands nowhere, so it has no place and no time.
func (w writer) pull(s *plan.Shot, p *plan.Pull) {
	in := sheet.Style(s)
	number := fmt.Sprint(p.Number)
	w.markup("<fieldset data-pull=\"%s\"><legend dir=\"auto\">%s</legend>\n", number, number+" "+sheet.PullName(s, p))
	if says := cards.Says(s, p); says != "" {
		w.markup("<p class=\"setup\">%s</p>\n", says)
	}
	w.markup("<p class=\"taps\">")
	for _, r := range results {
		w.markup("<button type=\"button\" name=\"tap\" value=\"%s\">%s</button> ", r.word, r.tap)
	}
	w.markup("</p>\n<details><summary>More of it</summary>\n<p class=\"choice\">")
	for _, r := range results {
		w.markup("<label><input type=\"radio\" name=\"result-%s\" value=\"%s\"> %s</label> ", number, r.word, r.means)
	}
	w.markup("</p>\n<p class=\"fields\">")
	if p.Kind != "follow" {
		w.markup("<label>Landed at <input name=\"landed\" autocomplete=\"off\" placeholder=\"%s\" size=\"10\"></label> ", in.Tape(float64(p.ToM)))
		w.markup("<label>Time <input name=\"time_s\" inputmode=\"decimal\" autocomplete=\"off\" size=\"5\"> s</label> ")
	}
	w.markup("<label>Note <input name=\"note\" autocomplete=\"off\"></label></p>\n</details></fieldset>\n")
}
