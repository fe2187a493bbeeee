// Writing a log of tries: beside its plan, into a regular file, and nowhere else
// whatever is put in its place meanwhile.

package preview

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync/atomic"

	"pullscore/interp/takes"
)

// attempts is how often a log is looked for that comes and goes while it is
// opened.
const attempts = 10

// appendTake appends a take to a log; a new one begins with the header.
func appendTake(path, header string, t takes.Take) error {
	return inLog(path, header, func(f *os.File) error { return takes.AppendTo(f, filepath.Base(path), t) })
}

// inLog does something to a log that is open; a new one begins with the header.
func inLog(path, header string, do func(f *os.File) error) (err error) {
	name := filepath.Base(path)
	root, err := os.OpenRoot(filepath.Dir(path))
	if err != nil {
		return fmt.Errorf("%s: %w", name, plainly(err))
	}
	defer root.Close()
	f, err := openLog(root, name, header)
	if err != nil {
		return fmt.Errorf("%s: %w", name, plainly(err))
	}
	defer func() {
		if closed := f.Close(); err == nil && closed != nil {
			err = fmt.Errorf("%s: %w", name, plainly(closed))
		}
	}()
	return plainly(do(f))
}

// errKind is the error of a log that is a link, a folder or a device.
var errKind = errors.New("it is no regular file")

// openLog opens a log in the folder of a plan, and makes one where there is
// none. No link is followed, not even within the folder: what is open is looked
// at, and must be what lies under that name.
func openLog(root *os.Root, name, header string) (*os.File, error) {
	for range attempts {
		info, err := root.Lstat(name)
		flags := os.O_RDWR | os.O_APPEND
		switch {
		case errors.Is(err, fs.ErrNotExist):
			if begin(root, name, header) {
				continue
			}
			flags |= os.O_CREATE | os.O_EXCL // which never goes through a link
		case err != nil:
			return nil, err
		case !info.Mode().IsRegular():
			return nil, errKind
		}
		f, err := root.OpenFile(name, flags, 0o666)
		if errors.Is(err, fs.ErrExist) || errors.Is(err, fs.ErrNotExist) {
			continue // it has come or gone since
		}
		if err != nil {
			return nil, err
		}
		if lies(root, name, f) {
			return f, headed(f, header)
		}
		f.Close()
	}
	return nil, errKind
}

// headed writes the header into a log that has none, as on a disk without hard links.
func headed(f *os.File, header string) error {
	info, err := f.Stat()
	if err == nil && info.Size() == 0 {
		_, err = f.WriteString(header)
	}
	return err
}

// begun counts the logs that were begun, so that two at once have files of their own.
var begun atomic.Int64

// begin makes a log with a header, which gets its name only once the header is
// in it, so that two programs never write two. It reports whether there is a log
// now; on a disk without hard links there is none.
func begin(root *os.Root, name, header string) bool {
	temp := fmt.Sprintf("%s.%d.%d.tmp", name, os.Getpid(), begun.Add(1))
	f, err := root.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return false
	}
	defer root.Remove(temp)
	_, err = f.WriteString(header)
	return errors.Join(err, f.Close()) == nil && root.Link(temp, name) == nil
}

// lies reports whether an open file is a regular one that lies under that name.
func lies(root *os.Root, name string, f *os.File) bool {
	is, err := f.Stat()
	if err != nil || !is.Mode().IsRegular() {
		return false
	}
	there, err := root.Lstat(name)
	return err == nil && os.SameFile(is, there)
}

// plainly takes the path out of an error of the system.
func plainly(err error) error {
	var at *os.PathError
	if errors.As(err, &at) {
		return at.Err
	}
	return err
}
