package watch

import (
	"context"
	"path/filepath"
	"slices"
	"time"

	"github.com/fsnotify/fsnotify"
)

// How often everything is looked at: as a net below the system's events, and
// where there are none.
const (
	netInterval  = 2 * time.Second
	pollInterval = 500 * time.Millisecond
)

// busyShare is the least share of its time that a watcher waits: in a folder so
// large that a look takes long, looks come less often.
const busyShare = 20

// Options say how to watch.
type Options struct {
	// Poll asks for no events of the system, as on network drives that send
	// none, and looks at everything twice a second instead.
	Poll bool
}

// A Look says what is worth a look.
type Look struct {
	Files   []string // of those watched, as they were named, sorted
	Folders bool     // plans may have come to watched folders, or gone
	All     bool     // everything
}

// A Watcher watches files and folders of plans. It is for one goroutine.
type Watcher struct {
	events  *fsnotify.Watcher // nil: poll
	trouble error
	files   []string
	folders []string
	index   index
	watched map[string]watchedFolder
	net     time.Duration // how often everything is looked at, beside events
	next    time.Time     // when it is
	left    time.Time     // when Next last returned
}

// New returns a watcher of nothing yet. Where the system gives no events it
// polls, and Trouble says why.
func New(opt Options) *Watcher {
	w := &Watcher{watched: map[string]watchedFolder{}, net: netInterval}
	if !opt.Poll {
		w.events, w.trouble = fsnotify.NewWatcher()
	}
	return w
}

// Trouble says why the system's events do not tell everything, so that changes
// are seen late; nil where they do, or where they were not asked for.
func (w *Watcher) Trouble() error { return w.trouble }

// Close ends watching.
func (w *Watcher) Close() error {
	if w.events == nil {
		return nil
	}
	return w.events.Close()
}

// Watch sets what is watched from now on: files, which need not be there, and
// folders with all folders below them, for plans to come. If that is something
// new, everything is worth a look at once: it may have changed before it was
// watched.
func (w *Watcher) Watch(files, folders []string) {
	if slices.Equal(files, w.files) && slices.Equal(folders, w.folders) {
		return
	}
	w.files, w.folders = slices.Clone(files), slices.Clone(folders)
	w.reindex()
	w.next = time.Now()
}

// Next waits until something is worth a look. It returns the error of ctx when
// that is done.
func (w *Watcher) Next(ctx context.Context) (Look, error) {
	w.schedule()
	clock := time.NewTimer(time.Until(w.next))
	defer clock.Stop()
	defer func() { w.left = time.Now() }()
	var events chan fsnotify.Event
	var errors chan error
	if w.events != nil {
		events, errors = w.events.Events, w.events.Errors
	}
	for {
		g := gathering{watcher: w, files: map[string]bool{}}
		select {
		case <-ctx.Done():
			return Look{}, ctx.Err()
		case <-clock.C:
			g.everything()
			w.next = time.Time{}
		case ev := <-events:
			g.event(ev)
		case <-errors: // also that events were lost
			g.everything()
		}
		g.drain(events, errors)
		if look, ok := g.look(); ok {
			return look, nil
		}
	}
}

// schedule sets when everything is looked at, unless that is set.
func (w *Watcher) schedule() {
	if !w.next.IsZero() {
		return
	}
	wait := w.net
	if w.events == nil || w.trouble != nil {
		wait = pollInterval
	}
	if !w.left.IsZero() {
		wait = max(wait, busyShare*time.Since(w.left))
	}
	w.next = time.Now().Add(wait)
}

// A gathering collects what events come to.
type gathering struct {
	watcher *Watcher
	files   map[string]bool
	folders bool
	all     bool
	moved   bool // folders or links may have
}

func (g *gathering) everything() { g.all, g.moved = true, true }

// drain takes the events that are there already.
func (g *gathering) drain(events chan fsnotify.Event, errors chan error) {
	for {
		select {
		case ev := <-events:
			g.event(ev)
		case <-errors:
			g.everything()
		default:
			return
		}
	}
}

// event takes one event. A change of permissions or times alone is none; one of
// a name that nothing depends on is none either.
func (g *gathering) event(ev fsnotify.Event) {
	if ev.Op == fsnotify.Chmod || ev.Op == 0 {
		return
	}
	w, name := g.watcher, filepath.Clean(ev.Name)
	if _, ok := w.watched[name]; ok && !ev.Op.Has(fsnotify.Write) {
		w.forget(name) // another folder may be there now
		g.everything()
		return
	}
	for _, file := range w.index.files[name] {
		g.files[file] = true
	}
	switch {
	case w.index.turns[name]:
		g.everything()
	case w.index.files[name] != nil:
		g.moved = g.moved || ev.Op != fsnotify.Write
	}
	if w.index.concernsFolders(name, ev.Op) {
		g.folders, g.moved = true, true
	}
}

// look returns what was gathered; ok is false for nothing.
func (g *gathering) look() (look Look, ok bool) {
	if g.moved {
		g.watcher.reindex()
	}
	for file := range g.files {
		look.Files = append(look.Files, file)
	}
	slices.Sort(look.Files)
	look.Folders, look.All = g.folders || g.all, g.all
	return look, g.all || g.folders || len(look.Files) > 0
}
