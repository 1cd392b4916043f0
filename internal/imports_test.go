// Package internal_test holds the table of allowed imports: which package may
// build on which, with the reason for what is missing.
package internal_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// room is one package of the project.
type room struct {
	// may lists the packages of this project that it may import; a trailing /...
	// means all below.
	may []string
	// not lists other packages that it must not import.
	not []string
	// why is the reason for what is not allowed.
	why string
}

// outside is what a model must not touch: files, terminals, clocks, networks.
var outside = []string{"os", "io", "io/fs", "log", "net", "time"}

var rooms = map[string]room{
	"sim":                {may: []string{"sim/internal/..."}, not: outside, why: "a replication is a pure function: the model opens no file, prints nothing, reads no clock, and knows nothing of who uses it"},
	"sim/internal/draw":  {not: outside, why: "streams and laws depend on nothing but numbers"},
	"sim/internal/plan":  {may: []string{"sim/internal/draw"}, not: outside, why: "a plan is data: whoever runs it builds on it"},
	"sim/internal/part":  {may: []string{"sim/internal/draw", "sim/internal/plan"}, not: outside, why: "what happens inside a station knows no calendar and no neighbours, so that any engine can use it"},
	"sim/internal/plain": {may: []string{"sim/internal/draw", "sim/internal/plan", "sim/internal/part"}, not: outside, why: "the engine runs plans; compiling a line is the business of sim"},

	"scenarios":              {why: "files only"},
	"internal/quantity":      {why: "a quantity is text and a number; it has no use for a line"},
	"internal/scenario/tree": {why: "the syntax of a file has no meaning yet"},
	"internal/scenario":      {may: []string{"internal/quantity", "internal/scenario/tree", "sim"}, why: "reading does not run: a file can be checked without a study"},
	"internal/reference":     {why: "tables of values from sources know nothing of what is held against them"},
	"internal/estimate":      {why: "statistics take numbers; where these come from must not matter"},
	"internal/stoplog":       {why: "laws are fitted to numbers of a log; neither a scenario nor a study is needed for it"},
	"internal/result":        {may: []string{"sim"}, why: "results are types that other programs read; what computes them builds on them"},
	"internal/keyfigure":     {may: []string{"internal/quantity", "internal/scenario", "sim"}, why: "derived figures are arithmetic on a scenario; all that is run for them is a pair of stations without stops at one place, never the line"},
	"internal/study":         {may: []string{"internal/estimate", "internal/keyfigure", "internal/result", "internal/scenario", "sim"}, why: "a study finds numbers; how they are shown is the business of report"},
	"internal/proof":         {may: []string{"internal/estimate", "internal/keyfigure", "internal/reference", "internal/scenario", "internal/stoplog", "sim"}, why: "exact values are held against what computes, not against how it is shown"},
	"internal/chartkit":      {why: "the chart engine draws whatever it is given"},
	"internal/report": {
		may: []string{"internal/chartkit", "internal/keyfigure", "internal/quantity", "internal/result", "internal/scenario", "internal/study", "sim"},
		not: []string{"internal/estimate", "gonum.org/v1/gonum/stat", "gonum.org/v1/gonum/stat/distuv"},
		why: "a report shows finished results and computes nothing new",
	},
	"cmd/tuckline": {may: []string{"internal/...", "sim"}, why: "the command line starts what internal offers; only sim's own face may be seen"},
}

const module = "tuckline/"

// TestImports holds every package against the table. A package that is not in
// it fails too: say what it may build on.
func TestImports(t *testing.T) {
	found := map[string]bool{}
	err := filepath.WalkDir("..", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		base := entry.Name()
		if entry.IsDir() && (base == "node_modules" || base == "testdata" || (strings.HasPrefix(base, ".") && base != "..")) {
			return fs.SkipDir
		}
		if !strings.HasSuffix(base, ".go") || strings.HasSuffix(base, "_test.go") {
			return nil
		}
		pkg := path.Dir(strings.TrimPrefix(filepath.ToSlash(name), "../"))
		found[pkg] = true
		checkFile(t, name, pkg)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if !found["sim"] || !found["cmd/tuckline"] {
		t.Fatalf("the walk has missed packages, it found %v", found)
	}
}

func checkFile(t *testing.T, name, pkg string) {
	t.Helper()
	rule, known := rooms[pkg]
	if !known {
		t.Errorf("package %s is not in the table of imports: add what it may import, and why no more", pkg)
		return
	}
	file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	for _, spec := range file.Imports {
		imported, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		if !rule.allows(imported) {
			t.Errorf("%s imports %s, which %s must not: %s", name, imported, pkg, rule.why)
		}
	}
}

func (r room) allows(imported string) bool {
	inside, ours := strings.CutPrefix(imported, module)
	if slices.Contains(r.not, inside) {
		return false
	}
	if !ours {
		return true
	}
	return slices.ContainsFunc(r.may, func(allowed string) bool {
		below, all := strings.CutSuffix(allowed, "...")
		return inside == allowed || (all && strings.HasPrefix(inside, below))
	})
}

// TestImportRuleBites makes sure that the table can say no.
func TestImportRuleBites(t *testing.T) {
	for pkg, imported := range map[string]string{
		"sim":               "tuckline/internal/scenario",
		"internal/estimate": "tuckline/sim",
		"internal/report":   "gonum.org/v1/gonum/stat",
		"sim/internal/draw": "os",
		"internal/study":    "tuckline/internal/report",
		"cmd/tuckline":      "tuckline/sim/internal/plan",
	} {
		if rooms[pkg].allows(imported) {
			t.Errorf("%s may import %s, but must not", pkg, imported)
		}
	}
	if !rooms["cmd/tuckline"].allows("tuckline/internal/study") || !rooms["sim"].allows("tuckline/sim/internal/plan") {
		t.Error("what is allowed is refused")
	}
}
