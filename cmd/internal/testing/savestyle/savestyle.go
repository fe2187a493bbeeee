// Package savestyle saves files in the ways that editors, copiers and version
// control do, to test and to measure how a watch takes them.
package savestyle

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"
)

// A Style is one way to save.
type Style struct {
	Name string
	// Prepare lays out the folder, which is empty, with a file of that name in
	// it.
	Prepare func(dir, name string, data []byte) error
	// Save saves the file; n is different at each save.
	Save func(dir, name string, data []byte, n int) error
}

// The three styles that most editors save in.
var (
	// Plain empties the file and writes it.
	Plain = Style{"plain write", plain, func(dir, name string, data []byte, _ int) error {
		return plain(dir, name, data)
	}}
	// Rename writes another file and gives it the name.
	Rename = Style{"write temp and rename", plain, rename}
	// Backup moves the old file away and writes a new one, as vim does with
	// its options writebackup and backupcopy=no.
	Backup = Style{"write with backup, as vim", plain, backup}
)

// Folder takes the whole folder away and brings another, as a change of branch
// does.
var Folder = Style{"replaced folder", plain, replaceFolder}

// All are the styles that change a file.
var All = []Style{
	Plain,
	{"chunked write", plain, chunks},
	Rename,
	Backup,
	{"unlink and write", plain, unlink},
	{"swap of a link", linked, swapLink},
	{"swap of a linked folder", linkedFolder, swapFolder},
	Folder,
}

func plain(dir, name string, data []byte) error {
	return os.WriteFile(filepath.Join(dir, name), data, 0o666)
}

// chunkPause is what lies between two pieces of a chunked write.
const chunkPause = time.Millisecond

// chunks writes the file in four pieces.
func chunks(dir, name string, data []byte, _ int) error {
	f, err := os.Create(filepath.Join(dir, name))
	if err != nil {
		return err
	}
	const pieces = 4
	for i := range pieces {
		_, e := f.Write(data[len(data)*i/pieces : len(data)*(i+1)/pieces])
		err = errors.Join(err, e)
		time.Sleep(chunkPause)
	}
	return errors.Join(err, f.Close())
}

func rename(dir, name string, data []byte, n int) error {
	temp := fmt.Sprintf("%s.%d.tmp", name, n)
	if err := plain(dir, temp, data); err != nil {
		return err
	}
	return os.Rename(filepath.Join(dir, temp), filepath.Join(dir, name))
}

func backup(dir, name string, data []byte, _ int) error {
	path := filepath.Join(dir, name)
	if err := os.Rename(path, path+"~"); err != nil {
		return err
	}
	if err := plain(dir, name, data); err != nil {
		return err
	}
	return os.Remove(path + "~")
}

func unlink(dir, name string, data []byte, _ int) error {
	if err := os.Remove(filepath.Join(dir, name)); err != nil {
		return err
	}
	return plain(dir, name, data)
}

// linked makes the file a link to one in a folder beside.
func linked(dir, name string, data []byte) error {
	return swapLink(dir, name, data, 0)
}

// swapLink points the link at a new file, in one step.
func swapLink(dir, name string, data []byte, n int) error {
	store := dir + "-store"
	if err := os.MkdirAll(store, 0o777); err != nil {
		return err
	}
	version := fmt.Sprintf("%d-%s", n, name)
	if err := plain(store, version, data); err != nil {
		return err
	}
	return swing(filepath.Join(store, version), filepath.Join(dir, name))
}

// linkedFolder makes the file a link through a linked folder, as volumes with
// settings are laid out: name to ..data/name, ..data to ..0.
func linkedFolder(dir, name string, data []byte) error {
	if err := swapFolder(dir, name, data, 0); err != nil {
		return err
	}
	return os.Symlink(filepath.Join("..data", name), filepath.Join(dir, name))
}

// swapFolder points the linked folder at a new one and removes the old one.
func swapFolder(dir, name string, data []byte, n int) error {
	data0, _ := filepath.EvalSymlinks(filepath.Join(dir, "..data"))
	folder := fmt.Sprintf("..%d", n)
	if err := os.Mkdir(filepath.Join(dir, folder), 0o777); err != nil {
		return err
	}
	if err := plain(filepath.Join(dir, folder), name, data); err != nil {
		return err
	}
	if err := swing(folder, filepath.Join(dir, "..data")); err != nil || data0 == "" {
		return err
	}
	return os.RemoveAll(data0)
}

// swing makes a link point elsewhere, in one step.
func swing(target, link string) error {
	if err := os.Symlink(target, link+".new"); err != nil {
		return err
	}
	return os.Rename(link+".new", link)
}

func replaceFolder(dir, name string, data []byte, n int) error {
	if err := os.Rename(dir, fmt.Sprintf("%s.%d", dir, n)); err != nil {
		return err
	}
	if err := os.Mkdir(dir, 0o777); err != nil {
		return err
	}
	return plain(dir, name, data)
}
