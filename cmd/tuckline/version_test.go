package main

import (
	"runtime/debug"
	"testing"
)

func TestVersionOfABuild(t *testing.T) {
	commit := []debug.BuildSetting{{Key: "vcs.revision", Value: "0123456789abcdef0123456789abcdef01234567"}}
	changed := append(commit[:1:1], debug.BuildSetting{Key: "vcs.modified", Value: "true"})
	for _, c := range []struct {
		main     string
		settings []debug.BuildSetting
		want     string
	}{
		{"v1.2.0", commit, "v1.2.0"},
		{"(devel)", commit, "0123456789ab"},
		{"(devel)", changed, "0123456789ab, changed since"},
		{"", nil, "of no known commit"},
		{"(devel)", nil, "of no known commit"},
	} {
		info := &debug.BuildInfo{Main: debug.Module{Version: c.main}, Settings: c.settings}
		if got := versionOf(info); got != c.want {
			t.Errorf("%s with %v: got %q, want %q", c.main, c.settings, got, c.want)
		}
	}
}
