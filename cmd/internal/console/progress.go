// Progress: a bar for work that takes longer than one waits without a sign.

package console

import (
	"fmt"
	"strings"
	"time"
)

// patience is how long work goes on before a bar appears, and interval how
// often the bar is drawn again.
const (
	patience = time.Second
	interval = 100 * time.Millisecond
)

// A Progress shows how much of some work is done, on a terminal only, and only
// once the work has taken a second. It is for one goroutine.
type Progress struct {
	screen      Screen
	what        string
	total, done int
	next        time.Time // when to draw
	shown       bool
	now         func() time.Time
}

// NewProgress returns the progress of a number of steps.
func NewProgress(screen Screen, what string, total int) *Progress {
	p := &Progress{screen: screen, what: what, total: total, now: time.Now}
	p.next = p.now().Add(patience)
	return p
}

// Step notes one more step as done, and shows it when it is time.
func (p *Progress) Step() {
	p.done++
	if !p.screen.Terminal || p.total < 2 || p.now().Before(p.next) {
		return
	}
	p.next = p.now().Add(interval)
	p.shown = true
	fmt.Fprintf(p.screen.W, "\r\x1b[K%s", p.line())
}

// barCells is the length of the bar, in columns.
const barCells = 24

func (p *Progress) line() string {
	full := barCells * p.done / p.total
	return fmt.Sprintf("%s %s%s %d of %d", p.what,
		p.screen.Paint(Cyan, strings.Repeat("━", full)),
		p.screen.Paint(Dim, strings.Repeat("─", barCells-full)), p.done, p.total)
}

// Clear takes the bar away, before something else is printed.
func (p *Progress) Clear() {
	if p.shown {
		fmt.Fprint(p.screen.W, "\r\x1b[K")
		p.shown = false
	}
}
