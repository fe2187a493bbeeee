package main

import (
	"runtime/debug"
	"testing"
)

func TestVersionHasNoDate(t *testing.T) {
	commit := debug.BuildSetting{Key: "vcs.revision", Value: "0123456789abcdef0123456789abcdef01234567"}
	changed := debug.BuildSetting{Key: "vcs.modified", Value: "true"}
	when := debug.BuildSetting{Key: "vcs.time", Value: "2031-05-06T07:08:09Z"}
	for _, test := range []struct {
		main     string
		settings []debug.BuildSetting
		want     string
	}{
		{"v1.2.3", nil, "v1.2.3"},
		{"v1.3.0-rc.1", nil, "v1.3.0-rc.1"},
		{"v1.2.3+dirty", []debug.BuildSetting{commit, changed}, "v1.2.3, changed"},
		{"(devel)", nil, "unreleased"},
		{"", nil, "unreleased"},
		{"(devel)", []debug.BuildSetting{commit, when}, "unreleased 0123456789ab"},
		{"(devel)", []debug.BuildSetting{commit, when, changed}, "unreleased 0123456789ab, changed"},
		{"v0.0.0-20310506070809-0123456789ab", nil, "unreleased 0123456789ab"},
		{"v1.2.4-0.20310506070809-0123456789ab+dirty", []debug.BuildSetting{commit, changed}, "unreleased 0123456789ab, changed"},
	} {
		info := &debug.BuildInfo{Main: debug.Module{Version: test.main}, Settings: test.settings}
		if got := version(info); got != test.want {
			t.Errorf("%q %v: %q, want %q", test.main, test.settings, got, test.want)
		}
	}
}
