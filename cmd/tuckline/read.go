package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"tuckline/internal/scenario"
)

// readScenario reads a scenario file with the values of --set. Files that it
// names lie beside it.
func readScenario(name string, sets []string) (*scenario.Scenario, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, inputFault{fileFault(name, err)}
	}
	beside := func(other string) ([]byte, error) {
		if !filepath.IsAbs(other) {
			other = filepath.Join(filepath.Dir(name), other)
		}
		return os.ReadFile(other)
	}
	s, err := scenario.Read(name, text, scenario.Options{Sets: sets, Files: beside})
	if err != nil {
		return nil, inputFault{err}
	}
	return s, nil
}

// scenarioFiles completes the names of scenario files.
func scenarioFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
}

// fileFault says in people's words why a file cannot be read.
func fileFault(name string, err error) error {
	switch {
	case errors.Is(err, os.ErrNotExist):
		return fmt.Errorf("there is no file %s", name)
	case errors.Is(err, os.ErrPermission):
		return fmt.Errorf("%s may not be read: check its permissions", name)
	default:
		return fmt.Errorf("%s cannot be read: %w", name, err)
	}
}
