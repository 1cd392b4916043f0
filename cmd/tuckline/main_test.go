package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "write the golden files anew")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"tuckline": main,
		// exit-code runs tuckline and prints its exit code as the last line.
		"exit-code": func() {
			code := run(os.Args[1:], os.Stdout, os.Stderr)
			fmt.Printf("exit code %d\n", code)
		},
	})
}

// TestScript runs the whole program, each script in a folder of its own with a
// copy of the scenarios.
func TestScript(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("testdata", "script"),
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup:               func(env *testscript.Env) error { return copyScenarios(env.WorkDir) },
	})
}

func copyScenarios(work string) error {
	return os.CopyFS(filepath.Join(work, "scenarios"), os.DirFS(filepath.Join("..", "..", "scenarios")))
}
