package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"github.com/spf13/cobra"

	"tuckline/internal/chartkit"
)

// version is set when a release is built: -ldflags "-X main.version=...".
var version = ""

func versionCommand(t terminal) *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "Show the version, and whether the chart engine is inside",
		Args:  noMore,
		RunE: func(*cobra.Command, []string) error {
			charts := "with the chart engine"
			if _, err := chartkit.GzipJS(); err != nil {
				charts = "without the chart engine: " + err.Error()
			}
			_, err := fmt.Fprintf(t.out, "tuckline %s, %s, %s/%s\n%s\n", programVersion(), runtime.Version(), runtime.GOOS, runtime.GOARCH, charts)
			return err
		},
	}
}

// programVersion is the version of a release, or what the build knows of itself.
func programVersion() string {
	if version != "" {
		return version
	}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		info = &debug.BuildInfo{}
	}
	return versionOf(info)
}

// shownDigits of a commit are enough to find it.
const shownDigits = 12

// noCommit is the version of a program that was built outside its repository.
const noCommit = "of no known commit"

// versionOf is the version of the module, or the commit that was built.
func versionOf(info *debug.BuildInfo) string {
	if v := info.Main.Version; v != "" && v != "(devel)" {
		return v
	}
	commit, changed := noCommit, ""
	for _, one := range info.Settings {
		switch {
		case one.Key == "vcs.revision":
			commit = one.Value[:min(shownDigits, len(one.Value))]
		case one.Key == "vcs.modified" && one.Value == "true":
			changed = ", changed since"
		}
	}
	return commit + changed
}
