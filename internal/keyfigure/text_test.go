package keyfigure

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
)

var update = flag.Bool("update", false, "write the golden files anew")

func TestTextIsWhatPeopleSee(t *testing.T) {
	for name, s := range map[string]*scenario.Scenario{
		"lowmere": lowmere(), "tarn-hollow": tarnHollow(36, 72), "tarn-hollow-at-42": tarnHollow(42, 84),
		"brackwater-merged": merged(), "brackwater-wide": wide(), "first-line": readExample(t, "first-line.yaml"),
		"two-ends": twoEnds(),
	} {
		t.Run(name, func(t *testing.T) {
			var b strings.Builder
			if err := Derive(s).Text(&b); err != nil {
				t.Fatal(err)
			}
			for i, line := range strings.Split(b.String(), "\n") {
				if utf8.RuneCountInString(line) > width {
					t.Errorf("line %d is wider than %d columns: %s", i+1, width, line)
				}
			}
			path := filepath.Join("testdata", name+".txt")
			if *update {
				if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), b.String()); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A number stays with its unit, also behind a name that ends in a number.
func TestNumbersStayWithTheirUnits(t *testing.T) {
	got := glued("breakdown at blister machine 1 4.0 %, then 45 min")
	if want := []string{"breakdown", "at", "blister", "machine", "1 4.0 %,", "then", "45 min"}; cmp.Diff(want, got) != "" {
		t.Errorf("got %q, want %q", got, want)
	}
}
