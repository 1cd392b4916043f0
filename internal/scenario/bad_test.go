package scenario_test

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
)

var update = flag.Bool("update", false, "write the files that people see anew")

const badFolder = "../../testdata/bad/"

// golden holds a text against a file, or writes the file.
func golden(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s (-want +got):\n%s", file, diff)
	}
}

// TestBadInputs reads every bad input and compares the whole message.
func TestBadInputs(t *testing.T) {
	files, err := filepath.Glob(badFolder + "*.yaml")
	if err != nil || len(files) < 60 {
		t.Fatalf("%d bad inputs were found: %v", len(files), err)
	}
	for _, file := range files {
		name := filepath.Base(file)
		t.Run(strings.TrimSuffix(name, ".yaml"), func(t *testing.T) {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			s, err := scenario.Read(name, text, scenario.Options{})
			var complaints scenario.Complaints
			if !errors.As(err, &complaints) || s != nil {
				t.Fatalf("it was read without complaint: %v", err)
			}
			golden(t, strings.TrimSuffix(file, ".yaml")+".txt", complaints.Error()+"\n")
		})
	}
}
