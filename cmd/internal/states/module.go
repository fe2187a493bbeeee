// Submodules: repositories that a revision has inside of its own folders, each
// at a commit of its own.

package states

import (
	"errors"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// module reads which files a submodule has at a commit. One that is not checked
// out here, or lacks the commit, is noted: what lies in it cannot be read.
func (t *Tree) module(name, commit string) error {
	repository := filepath.Join(t.root, filepath.FromSlash(name), ".git")
	_, err := os.Stat(repository)
	var list []byte
	if err == nil {
		list, err = gitIn(repository, "ls-tree", "-r", "-l", "-z", "--full-tree", commit)
	}
	if err != nil {
		t.absent = append(t.absent, name)
		return nil
	}
	return t.list(string(list), repository, name+"/")
}

// gitIn runs git in the repository of a submodule; in that around the current
// folder where it is empty. The flag counts for more than what a hook has in its
// environment.
func gitIn(repository string, args ...string) ([]byte, error) {
	if repository != "" {
		args = append([]string{"--git-dir=" + repository}, args...)
	}
	return git(args...)
}

// Absent returns an error for a path in a submodule that cannot be read.
func (t *Tree) Absent(file string) error {
	name, ok := t.name(file)
	for _, module := range t.absent {
		if ok && (name == module || strings.HasPrefix(name, module+"/")) {
			return errors.New("lies in the submodule " + path.Base(module) + ", whose commit is not here; git submodule update fetches it")
		}
	}
	return nil
}
