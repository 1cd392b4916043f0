package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// folder is where the files of a run go. It appears with all of them at the
// end, or not at all.
type folder struct {
	// wanted is the folder of --out, or the name from which new ones are made.
	wanted string
	fixed  bool
}

// folderFor says where the results of a scenario go: out if given, otherwise
// NAME-results in the current directory.
func folderFor(out, scenarioFile string) (folder, error) {
	if out == "" {
		name := filepath.Base(scenarioFile)
		return folder{wanted: strings.TrimSuffix(name, filepath.Ext(name)) + "-results"}, nil
	}
	entries, err := os.ReadDir(out)
	switch {
	case errors.Is(err, os.ErrNotExist), err == nil && len(entries) == 0:
		return folder{wanted: filepath.Clean(out), fixed: true}, nil
	case err == nil:
		return folder{}, inputFault{fmt.Errorf("--out %s: the folder holds files already, and older results are never written over; name a new folder", out)}
	default:
		return folder{}, inputFault{fmt.Errorf("--out %s: a folder is needed: %w", out, err)}
	}
}

// file is one of the files of a run.
type file struct {
	name  string
	write func(io.Writer) error
}

// write makes the folder with all files and returns its path.
func (f folder) write(files []file) (string, error) {
	parent := filepath.Dir(f.wanted)
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return "", fmt.Errorf("the results cannot be written: %w", err)
	}
	work, err := os.MkdirTemp(parent, ".tuckline-*")
	if err != nil {
		return "", fmt.Errorf("the results cannot be written: %w", err)
	}
	defer os.RemoveAll(work)
	for _, one := range files {
		if err := one.writeTo(work); err != nil {
			return "", fmt.Errorf("%s cannot be written: %w", one.name, err)
		}
	}
	return f.place(work)
}

func (f file) writeTo(dir string) error {
	out, err := os.Create(filepath.Join(dir, f.name))
	if err != nil {
		return err
	}
	return errors.Join(f.write(out), out.Close())
}

// place gives the finished folder its name. An empty folder made first keeps
// two programs from taking the same one.
func (f folder) place(work string) (string, error) {
	for n := 1; ; n++ {
		name := f.name(n)
		err := os.Mkdir(name, 0o755)
		if errors.Is(err, os.ErrExist) && !f.fixed {
			continue
		}
		if err != nil && !errors.Is(err, os.ErrExist) {
			return "", fmt.Errorf("the results cannot be written: %w", err)
		}
		if err := errors.Join(os.Chmod(work, 0o755), os.Remove(name), os.Rename(work, name)); err != nil {
			return "", fmt.Errorf("the results cannot be written: %w", err)
		}
		return name, nil
	}
}

func (f folder) name(n int) string {
	if n == 1 {
		return f.wanted
	}
	return fmt.Sprintf("%s-%d", f.wanted, n)
}
