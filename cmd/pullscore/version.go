// pullscore version: which version this is.

package main

import (
	"fmt"
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
	info, ok := debug.ReadBuildInfo()
	if !ok {
		info = &debug.BuildInfo{}
	}
	_, err := fmt.Fprintln(s.out, "pullscore", version(info))
	return err
}

// revisionDigits is how much of a commit's name tells it apart.
const revisionDigits = 12

// version names what was built: by its tag, else by its commit. It never has a
// date, so that building twice from the same files gives the same program.
func version(info *debug.BuildInfo) string {
	settings := map[string]string{}
	for _, s := range info.Settings {
		settings[s.Key] = s.Value
	}
	revision := settings["vcs.revision"]
	if tag := info.Main.Version; strings.HasPrefix(tag, "v") && !strings.Contains(tag, "-0.") && !strings.HasPrefix(tag, "v0.0.0-") {
		return strings.TrimSuffix(tag, "+dirty")
	}
	if revision == "" {
		return "unreleased"
	}
	text := "unreleased " + revision[:min(revisionDigits, len(revision))]
	if settings["vcs.modified"] == "true" {
		text += ", changed"
	}
	return text
}
