package report

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// A line with everything: each chart that only such a line has is drawn, in wide, narrow and dark.
func TestAWholeLineInABrowser(t *testing.T) {
	page := written(t, Page{Outcome: inventedWhole(), Version: "tuckline test"})
	b := openTab(t, page, 1200, 900)
	b.drawn(t)
	got := ask[map[string]map[string]int](t, b, coloured)
	// By hand: five waits of the cartoner by stops and one by rejects, of which one is blocked, and two of the blister
	// machine, which limits too; losses:
	// four ways at the blister machine, two at the cartoner, three at print-and-check, one at each other.
	for chart, want := range map[string]map[string]int{
		"origins": {"line #1b1f22": 3 * (6 + 2)},
		"losses":  {"#0072b2": 4 + 2 + 3 + 1 + 1, "line #1b1f22": 3 * 11},
	} {
		for colour, n := range want {
			if got[chart][colour] != n {
				t.Errorf("chart %s: %d shapes of %s, want %d; all: %v", chart, got[chart][colour], colour, n, got[chart])
			}
		}
	}
	overflow(t, b)
	b.picture(t, "whole")
	b.scheme(t, "dark")
	b.drawn(t)
	b.picture(t, "whole-dark")
	b.quiet(t)
	narrow := openTab(t, page, 390, 844)
	narrow.drawn(t)
	overflow(t, narrow)
	narrow.picture(t, "whole-narrow")
	if folder := os.Getenv("PICTURES"); folder != "" {
		pdf, err := chromedp.Run(b, chromedp.PrintToPDF(chromedp.PDFPaper(chromedp.PaperA4)))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, "whole.pdf"), pdf, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}
