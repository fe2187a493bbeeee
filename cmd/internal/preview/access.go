// The token of an address that others can reach, kept from one run to the next,
// so that a phone which has the page open need not be given another address.

package preview

import (
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"time"
)

const (
	keptFor   = 30 * 24 * time.Hour
	keptBytes = 4 << 10 // that a kept token may have in all
)

// A keptToken is a token as it lies on disk.
type keptToken struct {
	Token string    `json:"token"`
	Made  time.Time `json:"made"`
}

// accessToken returns the token of an address by its port and the folder of the
// program: the one that was kept less than 30 days ago, else a new one, which is
// kept. An error tells why it is not; the token is good all the same.
func accessToken(dir, port, folder string, fresh bool, now time.Time) (token string, err error) {
	token = rand.Text()
	if dir == "" {
		if dir, err = os.UserCacheDir(); err != nil {
			return token, err
		}
		dir = filepath.Join(dir, "pullscore")
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return token, plainly(err)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return token, plainly(err)
	}
	defer root.Close()
	sum := sha256.Sum256([]byte(port + "\n" + folder))
	name := "page-" + hex.EncodeToString(sum[:12]) + ".json"
	if !fresh {
		if kept, ok := readToken(root, name, now); ok {
			return kept, nil
		}
	}
	return token, writeToken(root, name, keptToken{Token: token, Made: now})
}

// readToken reads a kept token. One that others could read or write is not
// trusted.
func readToken(root *os.Root, name string, now time.Time) (token string, ok bool) {
	f, err := root.Open(name)
	if err != nil {
		return "", false
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil || !info.Mode().IsRegular() || runtime.GOOS != "windows" && info.Mode().Perm() != 0o600 {
		return "", false
	}
	var kept keptToken
	if err := json.NewDecoder(io.LimitReader(f, keptBytes)).Decode(&kept); err != nil {
		return "", false
	}
	age := now.Sub(kept.Made)
	return kept.Token, len(kept.Token) >= len(rand.Text()) && age >= 0 && age < keptFor
}

// writeToken keeps a token, in one step.
func writeToken(root *os.Root, name string, kept keptToken) error {
	data, err := json.Marshal(kept)
	if err != nil {
		return err
	}
	temp := fmt.Sprintf("%s.%d.tmp", name, os.Getpid())
	if err := root.Remove(temp); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return plainly(err)
	}
	f, err := root.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return plainly(err)
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Close()); err == nil {
		err = root.Rename(temp, name)
	}
	if err != nil {
		root.Remove(temp) //nolint:errcheck // the other error is told
	}
	return plainly(err)
}
