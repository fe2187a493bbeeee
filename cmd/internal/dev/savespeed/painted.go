// From a save to the new score painted on the live page, in a browser without a
// screen.

package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/chromedp/chromedp"
)

const paintedLimit = 50 * time.Millisecond

// heard tells this program the number of a save once the page has painted it:
// after the frame that follows the change, a message comes when it is done.
const heard = `(() => {
	const done = new MessageChannel();
	let number = 0;
	done.port1.onmessage = () => painted(number);
	const look = () => requestAnimationFrame(() => {
		number = Number(/Save (\d+)/.exec(document.querySelector(".sheet > svg > title")?.textContent)?.[1] ?? -1);
		done.port2.postMessage(0);
	});
	new MutationObserver(look).observe(document.getElementById("sheets"), { childList: true, subtree: true });
	look();
})()`

// repaint is how long the page takes, in milliseconds, from a change to having
// painted it, with nothing to fetch or to draw: the floor of what is measured.
const repaint = `new Promise((told) => {
	const done = new MessageChannel(), from = performance.now();
	done.port1.onmessage = () => told(performance.now() - from);
	document.getElementById("clock").value += " ";
	requestAnimationFrame(() => done.port2.postMessage(0));
})`

// A page is the live page of a running program, open in a browser.
type page struct {
	ctx     context.Context
	painted chan int // numbers of saves
	close   func()
}

// openPage starts a browser and shows the address.
func openPage(url, dir string) (*page, error) {
	path, err := exec.LookPath("chromium")
	if err != nil {
		return nil, err
	}
	all, endAll := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.UserDataDir(dir), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true), chromedp.WindowSize(1440, 900))...)
	ctx, end := chromedp.NewContext(all)
	p := &page{ctx: ctx, painted: make(chan int, 10*saves), close: func() { end(); endAll() }}
	err = chromedp.Do(ctx,
		chromedp.ExposeFunc("painted", func(_ context.Context, n int) (bool, error) { p.painted <- n; return true, nil }),
		chromedp.Navigate(url),
		chromedp.WaitReady(chromedp.CSS(".sheet > svg")),
		chromedp.Evaluate[chromedp.Void](heard))
	if err != nil {
		p.close()
		return nil, err
	}
	return p, nil
}

// floor returns how long repaints take that show nothing new.
func (p *page) floor() ([]time.Duration, error) {
	var times []time.Duration
	for range saves {
		t, err := chromedp.Run(p.ctx, chromedp.Evaluate[float64](repaint, chromedp.EvalAwaitPromise))
		if err != nil {
			return nil, err
		}
		times = append(times, time.Duration(t*float64(time.Millisecond)))
	}
	slices.Sort(times)
	return times, nil
}

// await waits until a save has been painted, and returns how long after start.
func (p *page) await(n int, start time.Time) (time.Duration, error) {
	clock := time.NewTimer(tooLong)
	defer clock.Stop()
	for {
		select {
		case got := <-p.painted:
			if got == n {
				return time.Since(start), nil
			}
		case <-clock.C:
			return 0, fmt.Errorf("save %d was not painted after %v", n, tooLong)
		}
	}
}

// paint measures one style with the page open.
func (b *bench) paint() (err error) {
	if err := b.folders(); err != nil {
		return err
	}
	program := exec.Command(b.program, "watch", "-o", b.drawings(), filepath.Join(b.plans(), planFile))
	program.Stderr = os.Stderr
	out, err := program.StdoutPipe()
	if err != nil {
		return err
	}
	if err := program.Start(); err != nil {
		return err
	}
	defer func() { err = errors.Join(err, program.Process.Signal(os.Interrupt), program.Wait()) }()
	lines := bufio.NewScanner(out)
	if !lines.Scan() {
		return errors.New("the program prints no address")
	}
	_, url, ok := strings.Cut(lines.Text(), ": ")
	if !ok {
		return fmt.Errorf("no address in %q", lines.Text())
	}
	go func() {
		for lines.Scan() { // whoever is not read has to wait
		}
	}()
	p, err := openPage(url, filepath.Join(b.dir, "browser"))
	if err != nil {
		return err
	}
	defer p.close()
	if b.floor, err = p.floor(); err != nil {
		return err
	}
	for n := 1; n <= saves; n++ {
		time.Sleep(40*time.Millisecond + rand.N(20*time.Millisecond)) // in no step with the screen
		data := text(n)
		start := time.Now()
		if err := b.style.Save(b.plans(), planFile, data, n); err != nil {
			return err
		}
		took, err := p.await(n, start)
		if err != nil {
			return err
		}
		b.times = append(b.times, took)
	}
	return nil
}

// measurePage prints what a save takes to be painted, style by style.
func measurePage(program, dir string) error {
	if _, err := exec.LookPath("chromium"); err != nil {
		fmt.Println("\nThe live page was not measured: chromium is not installed.")
		return nil
	}
	fmt.Printf("\n%-28s %17s    %s\n", "", "repaint alone", "painted on the live page")
	fmt.Printf("%-28s %8s %8s    %8s %8s %8s\n", "", "median", "99 %", "best", "median", "99 %")
	for i, style := range styles {
		b := bench{style: style, program: program, dir: filepath.Join(dir, fmt.Sprint("page", i))}
		if err := b.paint(); err != nil {
			return fmt.Errorf("%s: %w", style.Name, err)
		}
		b.print()
	}
	fmt.Printf("%-28s %17s    %8s %8s\n", "limit", "", "", ms(paintedLimit))
	return nil
}
