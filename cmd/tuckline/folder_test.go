package main

import (
	"errors"
	"io"
	"os"
	"testing"
)

func text(name, content string) file {
	return file{name, func(w io.Writer) error {
		_, err := io.WriteString(w, content)
		return err
	}}
}

func entries(t *testing.T) []string {
	t.Helper()
	found, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, one := range found {
		names = append(names, one.Name())
	}
	return names
}

// A file that fails half way leaves nothing behind.
func TestFolderWholeOrNotAtAll(t *testing.T) {
	t.Chdir(t.TempDir())
	where, err := folderFor("", "line.yaml")
	if err != nil {
		t.Fatal(err)
	}
	full := file{"report.html", func(w io.Writer) error {
		_, _ = io.WriteString(w, "half")
		return errors.New("disk full")
	}}
	_, err = where.write([]file{text("results.json", "{}"), full})
	if err == nil || err.Error() != "report.html cannot be written: disk full" {
		t.Errorf("got %v", err)
	}
	if left := entries(t); len(left) != 0 {
		t.Errorf("left behind: %v", left)
	}
}

// Each run gets a folder of its own.
func TestFolderNeverTwice(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, want := range []string{"line-results", "line-results-2", "line-results-3"} {
		where, err := folderFor("", "somewhere/line.yaml")
		if err != nil {
			t.Fatal(err)
		}
		if got, err := where.write([]file{text("a", want)}); err != nil || got != want {
			t.Fatalf("got %s, %v, want %s", got, err, want)
		}
	}
	if content, err := os.ReadFile("line-results/a"); err != nil || string(content) != "line-results" {
		t.Errorf("the first folder has changed: %q, %v", content, err)
	}
	if left := entries(t); len(left) != 3 {
		t.Errorf("more than the folders: %v", left)
	}
}

// An empty folder may be named, a full one not.
func TestFolderGiven(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.Mkdir("empty", 0o755); err != nil {
		t.Fatal(err)
	}
	for _, out := range []string{"empty", "new/deep"} {
		where, err := folderFor(out, "line.yaml")
		if err != nil {
			t.Fatal(err)
		}
		if got, err := where.write([]file{text("a", "x")}); err != nil || got != out {
			t.Errorf("got %s, %v, want %s", got, err, out)
		}
		if _, err := folderFor(out, "line.yaml"); !errors.As(err, new(inputFault)) {
			t.Errorf("%s holds files, got %v", out, err)
		}
	}
}
