// Writing: a file is replaced in one step or left as it was.

package files

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// MakeFolder makes a folder, and those that it lies in, where there is none.
func MakeFolder(folder string) error { return Plain(os.MkdirAll(folder, 0o777)) }

// Write puts data, in one part or more, into the file at path, as Stream does.
func Write(path string, data ...[]byte) error {
	return Stream(path, func(w io.Writer) error {
		for _, part := range data {
			if _, err := w.Write(part); err != nil {
				return err
			}
		}
		return nil
	})
}

// Stream puts what content writes into the file at path. It writes a new file
// beside it and renames that, so that nobody ever reads half of it; a file that
// is there keeps its permissions, a link stays a link, and a read-only file is
// not replaced. What is no regular file, as a terminal, is written to as it is.
func Stream(path string, content func(io.Writer) error) error {
	if target, err := filepath.EvalSymlinks(path); err == nil {
		path = target
	}
	mode := fs.FileMode(0o666) // less what the user's mask takes away
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return Plain(err)
	case info.IsDir():
		return fmt.Errorf("%s: is a folder", path)
	case !info.Mode().IsRegular():
		return writeTo(path, content)
	case info.Mode().Perm()&0o200 == 0:
		return fmt.Errorf("%s: is read-only", path)
	default:
		mode = info.Mode().Perm()
	}
	return replace(path, content, mode, info != nil)
}

// writeTo writes to what is there, as a device.
func writeTo(path string, content func(io.Writer) error) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return Plain(err)
	}
	err = content(f)
	return Plain(errors.Join(err, f.Close()))
}

// replace writes a new file and gives it the name; exact means that its mode
// shall be just the given one, whatever the user's mask.
func replace(path string, content func(io.Writer) error, mode fs.FileMode, exact bool) error {
	f, err := create(path, mode)
	if err != nil {
		return err
	}
	defer os.Remove(f.Name()) // gone once it is renamed
	err = content(f)
	if exact {
		err = errors.Join(err, f.Chmod(mode))
	}
	if err = errors.Join(err, f.Close()); err != nil {
		return Plain(err)
	}
	if err := os.Rename(f.Name(), path); err != nil {
		return fmt.Errorf("%s: cannot be replaced: %w", path, err)
	}
	return nil
}

// create opens a new hidden file in the folder of path.
func create(path string, mode fs.FileMode) (*os.File, error) {
	dir, base := filepath.Split(path)
	for n := os.Getpid(); ; n++ {
		name := filepath.Join(dir, fmt.Sprintf(".%.40s.%d.tmp", base, n))
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
		switch {
		case err == nil:
			return f, nil
		case errors.Is(err, fs.ErrExist):
			continue
		case errors.Is(err, fs.ErrNotExist):
			return nil, fmt.Errorf("%s: there is no folder %s", path, filepath.Dir(path))
		}
		return nil, fmt.Errorf("%s: cannot be written: %w", path, errors.Unwrap(err))
	}
}
