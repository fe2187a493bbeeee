// pullscore version: which version this is.

package main

import (
	"fmt"
	"regexp"
	"runtime/debug"
	"strings"
)

type versionCmd struct{}

// Help explains the command.
func (versionCmd) Help() string {
	return `Prints the released version, or for one that was built from a checkout the
commit, with "changed" where files differed from it.

  pullscore version`
}

// Run prints the version.
func (versionCmd) Run(s *session) error {
	_, err := fmt.Fprintln(s.out, "pullscore", builtVersion())
	return err
}

// builtVersion returns the version of this program.
func builtVersion() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		info = &debug.BuildInfo{}
	}
	return version(info)
}

// revisionDigits is how much of a commit's name tells it apart.
const revisionDigits = 12

// pseudo is the version that Go makes up for a commit without a tag: it ends in
// the time of the commit and its name. It is read only when it is asked for,
// since every start would pay for it.
const pseudo = `[-.]\d{14}-([0-9a-f]{12})$`

// version names what was built: by its tag, else by its commit. It never has a
// date, so that building twice from the same files gives the same program.
func version(info *debug.BuildInfo) string {
	tag, dirty := strings.CutSuffix(info.Main.Version, "+dirty")
	revision := ""
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			revision = s.Value[:min(revisionDigits, len(s.Value))]
		case "vcs.modified":
			dirty = dirty || s.Value == "true"
		}
	}
	made := regexp.MustCompile(pseudo).FindStringSubmatch(tag)
	text := tag
	switch {
	case made != nil:
		text = "unreleased " + made[1]
	case !strings.HasPrefix(tag, "v"):
		text = strings.TrimSpace("unreleased " + revision)
	}
	if dirty {
		text += ", changed"
	}
	return text
}
