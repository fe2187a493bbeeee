// How files are read, by the names under which the rest of the program knows
// it.

package interp

import "pullscore/interp/load"

type (
	// Options say how files are read.
	Options = load.Options
	// A Cache keeps what files were parsed to.
	Cache = load.Cache
	// A Script is a script page in Fountain.
	Script = load.Script
)

// MaxFileSize is the size in bytes above which a file is not read;
// MaxForeignSize holds for the files of a cut and for script pages.
const (
	MaxFileSize    = load.MaxFileSize
	MaxForeignSize = load.MaxForeignSize
)

// NewCache returns a cache of texts that have so many bytes together.
func NewCache(most int64) *Cache { return load.NewCache(most) }

// SizeLimit is how large a file may be, by its ending, and what it then is.
func SizeLimit(path string) (limit int64, what string) { return load.SizeLimit(path) }

// ReadFile reads a regular file of at most MaxFileSize bytes, or MaxForeignSize
// by its ending: a device or a pipe that never ends is an error, not a wait.
func ReadFile(path string) ([]byte, error) { return load.ReadFile(path) }
