package main

import (
	"bufio"
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// commands are the lines of the shell blocks of README.md that begin with prefix, and what stands so in backquotes.
func commands(t *testing.T, prefix string) []string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, block := range regexp.MustCompile("(?s)```sh\n(.*?)```").FindAllSubmatch(text, -1) {
		lines := bufio.NewScanner(bytes.NewReader(block[1]))
		for lines.Scan() {
			if strings.HasPrefix(lines.Text(), prefix) {
				all = append(all, lines.Text())
			}
		}
	}
	for _, inline := range regexp.MustCompile("`("+regexp.QuoteMeta(prefix)+"[^`\n]+)`").FindAllSubmatch(text, -1) {
		all = append(all, string(inline[1]))
	}
	return all
}

// words splits a command as a shell does, as far as README.md needs it.
func words(command string) []string {
	var all []string
	for _, part := range regexp.MustCompile(`"[^"]*"|\S+`).FindAllString(command, -1) {
		all = append(all, strings.Trim(part, `"`))
	}
	return all
}

// TestReadmeCommands runs every command that README.md shows.
func TestReadmeCommands(t *testing.T) {
	shown := commands(t, "./tuckline ")
	if len(shown) < 5 {
		t.Fatalf("only %d commands were found in README.md", len(shown))
	}
	work := t.TempDir()
	if err := copyScenarios(work); err != nil {
		t.Fatal(err)
	}
	t.Chdir(work)
	for _, command := range shown {
		var stdout, stderr bytes.Buffer
		if code := run(words(command)[1:], &stdout, &stderr); code != done {
			t.Errorf("%s: exit code %d\n%s", command, code, stderr.String())
		}
		if stdout.Len() == 0 {
			t.Errorf("%s: no answer", command)
		}
	}
}

// TestReadmeTargets makes sure that the targets of make that README.md names exist.
func TestReadmeTargets(t *testing.T) {
	makefile, err := os.ReadFile(filepath.Join("..", "..", "Makefile"))
	if err != nil {
		t.Fatal(err)
	}
	shown := commands(t, "make ")
	if len(shown) == 0 {
		t.Fatal("no make command was found in README.md")
	}
	for _, command := range shown {
		target := words(command)[1]
		if !regexp.MustCompile(`(?m)^` + regexp.QuoteMeta(target) + `:`).Match(makefile) {
			t.Errorf("%s: there is no such target", command)
		}
	}
}
