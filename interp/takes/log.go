// A whole log at once, and takes added to the end of one.

package takes

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"
	"sync"
)

// maxFaults is how many faults of a log are told; those after it are counted.
const maxFaults = 50

// Faults are what is wrong in a log.
type Faults struct {
	List []*Fault // the first 50
	N    int      // all
	Lost int      // those whose row could not be used

	// Unplaced counts the rows of plans that were not given; they are not among
	// the others.
	Unplaced  int
	Elsewhere []*Fault // the first 50 of them
}

// Add takes a fault in.
func (fs *Faults) Add(f *Fault) {
	if f.Unplaced {
		if fs.Unplaced++; len(fs.Elsewhere) < maxFaults {
			fs.Elsewhere = append(fs.Elsewhere, f)
		}
		return
	}
	fs.N++
	if !f.Kept {
		fs.Lost++
	}
	if len(fs.List) < maxFaults {
		fs.List = append(fs.List, f)
	}
}

// Places returns the faults as a report has them.
func (fs *Faults) Places() []Place {
	all := slices.Concat(fs.List, fs.Elsewhere)
	list := make([]Place, len(all))
	for i, f := range all {
		list[i] = Place{f.File, f.Line, f.Column, f.Message}
	}
	return list
}

// ReadLog adds the takes of a log to the sample, as ReadLog does.
func (s *Sample) ReadLog(r *Reader) (Faults, error) { return ReadLog(r, s.Add) }

// ReadLog hands the takes of a log to add, every row that can be used, and
// returns what is wrong with the others. The error is one of reading.
func ReadLog(r *Reader, add func(Take)) (Faults, error) {
	var faults Faults
	for {
		t, err := r.Read()
		var fault *Fault
		switch {
		case errors.Is(err, io.EOF):
			return faults, nil
		case errors.As(err, &fault):
			faults.Add(fault)
			if !fault.Kept {
				continue
			}
		case err != nil:
			return faults, err
		}
		add(t)
	}
}

// appending keeps those who add takes within this program apart; other programs
// are kept apart by what the system promises of files opened to append.
var appending sync.Mutex

// AppendFile adds takes to the end of the log at path, which is made with
// Header where there is none, and with columns for take, clip and timecode where a
// take has one. An old log keeps its own columns in their own
// order; it must have those that takes need. Two programs may add to one log
// at the same time.
func AppendFile(path string, list ...Take) (err error) {
	appending.Lock()
	defer appending.Unlock()
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		begin(path, list)
	}
	f, err := os.OpenFile(path, os.O_RDWR|os.O_APPEND|os.O_CREATE, 0o666)
	if err != nil {
		return err
	}
	defer func() {
		if closed := f.Close(); err == nil {
			err = closed
		}
	}()
	return appendTo(f, path, list)
}

// AppendTo adds takes to the end of a log that is open to read and to append.
// An empty one gets Header first; name is what an error calls it.
func AppendTo(f *os.File, name string, list ...Take) error {
	appending.Lock()
	defer appending.Unlock()
	return appendTo(f, name, list)
}

func appendTo(f *os.File, name string, list []Take) error {
	rows, err := rowsFor(f, name, list)
	if err != nil {
		return err
	}
	_, err = f.Write(rows) // in one piece, so that no reader sees half a row
	return err
}

// begin makes a log with a header. It gets its name only once the header is in
// it, and never in place of a log that another program made in the meantime.
// Where that cannot be done, as on a disk without hard links, no log is made,
// and the header is written with the first rows.
func begin(path string, list []Take) {
	temp := fmt.Sprintf("%s.%d.tmp", path, os.Getpid())
	f, err := os.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return
	}
	defer os.Remove(temp)
	_, err = f.WriteString(header(newColumns(list)))
	if errors.Join(err, f.Close()) == nil {
		os.Link(temp, path) //nolint:errcheck // see above
	}
}

// newColumns returns the columns of a log that begins with these takes: those of
// Columns, and before the note those that tell which clip they are of, where a take
// says that.
func newColumns(list []Take) []string {
	if !slices.ContainsFunc(list, func(t Take) bool { return t.OnSet != "" || t.Clip != "" || t.Timecode != "" }) {
		return Columns
	}
	last := len(Columns) - 1
	return slices.Concat(Columns[:last], []string{"take", "clip", "timecode"}, Columns[last:])
}

// header returns a row of names, with its line end.
func header(columns []string) string { return strings.Join(columns, ",") + "\n" }

// rowsFor returns what is to be written behind a log.
func rowsFor(f *os.File, path string, list []Take) (out []byte, err error) {
	info, err := f.Stat()
	if err != nil {
		return nil, err
	}
	columns := newColumns(list)
	if info.Size() == 0 {
		out = append(out, header(columns)...)
	} else {
		if columns, err = columnsOf(f, path, list); err != nil {
			return nil, err
		}
		var last [1]byte
		if _, err := f.ReadAt(last[:], info.Size()-1); err != nil {
			return nil, err
		}
		if last[0] != '\n' {
			out = append(out, '\n')
		}
	}
	for _, t := range list {
		out = appendRow(out, columns, t)
	}
	return out, nil
}

// columnsOf returns the columns of a log that has some. They must be enough for
// the takes to be read again, be it to count them alone; landed is enough only for
// takes that have it.
func columnsOf(f io.Reader, path string, list []Take) ([]string, error) {
	head := make([]byte, maxRow)
	n, err := io.ReadFull(f, head)
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) {
		return nil, err
	}
	row, err := NewRows(bytes.NewReader(head[:n]), path).Next()
	if err != nil {
		return nil, fmt.Errorf("no takes can be added: %w", err)
	}
	columns := make([]string, len(row))
	filled := make([]string, 0, len(row))
	unlanded := slices.ContainsFunc(list, func(t Take) bool { return t.Landed == "" })
	for i, field := range row {
		columns[i] = strings.ToLower(field.Text)
		if columns[i] != "landed" || !unlanded {
			filled = append(filled, columns[i])
		}
	}
	measured := slices.ContainsFunc(list, func(t Take) bool { return !t.Unmeasured })
	if lacks := lacking(filled); lacks != "" && measured && !countable(columns) {
		return nil, fmt.Errorf("%s: no takes can be added: %s", path, lacks)
	}
	return columns, nil
}
