package report

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

func drag(t *testing.T, b *tab, x, y, toX, toY float64) {
	t.Helper()
	for _, p := range []input.DispatchMouseEventParams{
		{Type: input.DispatchMouseEventTypeMouseMoved, X: x, Y: y},
		{Type: input.DispatchMouseEventTypeMousePressed, X: x, Y: y, Button: input.MouseButtonLeft, ClickCount: 1},
		{Type: input.DispatchMouseEventTypeMouseMoved, X: (x + toX) / 2, Y: toY, Button: input.MouseButtonLeft},
		{Type: input.DispatchMouseEventTypeMouseMoved, X: toX, Y: toY, Button: input.MouseButtonLeft},
		{Type: input.DispatchMouseEventTypeMouseReleased, X: toX, Y: toY, Button: input.MouseButtonLeft, ClickCount: 1},
	} {
		if _, err := chromedp.Call(b.Context, input.DispatchMouseEvent, p); err != nil {
			t.Fatal(err)
		}
	}
}

// Names of a scenario are somebody else's text: in headings, tables, options,
// tips, the printed header and the download.
func TestHostileNamesDoNotRun(t *testing.T) {
	o := inventedOutcome(hostileNames...)
	o.Scenario.Project.Number = hostileNames[4]
	o.Scenario.Title = hostileNames[0]
	o.Scenario.Source = []byte(strings.Join(hostileNames, "\n"))
	o.Results.Warnings = hostileNames
	for i := range o.Results.Stations {
		for k := range o.Results.Stations[i].Stops {
			o.Results.Stations[i].Stops[k].Name = hostileNames[k]
		}
	}
	b := openTab(t, written(t, Page{Outcome: o, Version: hostileNames[1]}), 1200, 900)
	b.drawn(t)
	if got := ask[string](t, b, `document.title`); got != hostileNames[0] {
		t.Errorf("title is %q: a name has run", got)
	}
	if n := ask[int](t, b, `document.querySelectorAll("img").length`); n != 0 {
		t.Errorf("%d images came from names", n)
	}
	if shown := ask[string](t, b, `getComputedStyle(document.body).display`); shown != "block" {
		t.Errorf("the body is displayed as %q: a name has changed the style", shown)
	}
	source := ask[string](t, b, `document.querySelector("pre").textContent`)
	if source != string(o.Scenario.Source) {
		t.Errorf("the scenario reads\n%s", source)
	}
	tip := hover(t, b, "states", "#56B4E9")
	if !namesOne(tip) {
		t.Errorf("the tip reads %q, want the name of the station in it", tip)
	}
	tip = hover(t, b, "timeline", "#D55E00")
	if !namesOne(tip) {
		t.Errorf("the tip of the timeline reads %q", tip)
	}
	if got := ask[string](t, b, `document.title`); got != hostileNames[0] {
		t.Errorf("title is %q: a name has run in a tip", got)
	}
	labels := ask[string](t, b, `document.querySelector('[data-option="option-waits"]').textContent`)
	for _, name := range []string{hostileNames[2], hostileNames[3]} {
		if !strings.Contains(labels, name) {
			t.Errorf("the name %q is not an axis label as it is", name)
		}
	}
	b.picture(t, "hostile")
	b.quiet(t)
}

func namesOne(text string) bool {
	return slices.ContainsFunc(hostileNames, func(name string) bool { return strings.Contains(text, name) })
}

// hover points at a shape of that colour, near the middle of the chart, and reads the tip.
func hover(t *testing.T, b *tab, chart, colour string) string {
	t.Helper()
	find := `(() => {
		const chart = document.querySelector('[data-option="option-` + chart + `"]');
		chart.scrollIntoView({ block: "center" });
		const all = [...chart.querySelectorAll('path[fill="` + colour + `"]')].map(e => e.getBoundingClientRect());
		const wide = all.filter(r => r.height > 12).sort((a, b) => b.width - a.width)[0];
		return [wide.x + wide.width / 2, wide.y + wide.height / 2];
	})()`
	at := ask[[]float64](t, b, find)
	for _, dx := range []float64{0, 0.4} {
		move := input.DispatchMouseEventParams{Type: input.DispatchMouseEventTypeMouseMoved, X: at[0] + dx, Y: at[1]}
		if _, err := chromedp.Call(b.Context, input.DispatchMouseEvent, move); err != nil {
			t.Fatal(err)
		}
	}
	tip := `[...document.querySelector('[data-option="option-` + chart + `"]').children].slice(1).map(e => e.textContent).join("")`
	shown, err := chromedp.Run(b, chromedp.Poll[string](tip))
	if err != nil {
		t.Fatal(err)
	}
	return shown
}

func TestDark(t *testing.T) {
	b := openTab(t, written(t, Page{Outcome: inventedOutcome()}), 1200, 900)
	b.drawn(t)
	b.scheme(t, "dark")
	if _, err := chromedp.Run(b, chromedp.Poll[bool](`document.querySelectorAll('[data-option="option-states"] path[fill="#22343D"]').length > 4`)); err != nil {
		t.Errorf("running is not drawn in its dark tint: %v", err)
	}
	if got := ask[string](t, b, `getComputedStyle(document.body).backgroundColor`); got != "rgb(20, 24, 27)" {
		t.Errorf("the paper is %s", got)
	}
	b.picture(t, "dark")
	b.quiet(t)
}

func TestNarrow(t *testing.T) {
	b := openTab(t, written(t, Page{Outcome: inventedOutcome()}), 360, 740)
	b.drawn(t)
	overflow(t, b)
	ask[bool](t, b, `(document.querySelectorAll("details").forEach(d => d.open = true), true)`)
	overflow(t, b)
	ask[bool](t, b, `(document.querySelectorAll("details").forEach(d => d.open = false), true)`)
	b.picture(t, "narrow")
	b.quiet(t)
}

func TestWithoutScriptsTheTablesAreRead(t *testing.T) {
	b := newTab(t)
	if _, err := chromedp.Call(b.Context, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true}); err != nil {
		t.Fatal(err)
	}
	b.do(t, chromedp.EmulateViewport(1200, 900), chromedp.Navigate("file://"+written(t, Page{Outcome: inventedOutcome()})))
	if text := ask[string](t, b, `document.body.innerText`); !strings.Contains(text, say("no.script", nil)) {
		t.Error("nothing says that charts need JavaScript")
	}
	if shown := ask[string](t, b, `getComputedStyle(document.querySelector(".charts")).display`); shown != "none" {
		t.Errorf("the empty places of charts are displayed as %s", shown)
	}
	row := ask[string](t, b, `(document.querySelector("#states details").open = true, document.querySelector("#states tbody tr").innerText)`)
	if !strings.HasPrefix(row, "blister machine") {
		t.Errorf("the first row of the states reads %q", row)
	}
	b.picture(t, "no-script")
}

var pdfPage = regexp.MustCompile(`/Type\s*/Page\b[^s]`)

func TestPrinted(t *testing.T) {
	b := openTab(t, written(t, Page{Outcome: inventedOutcome(), Version: "tuckline 0.1"}), 1200, 900)
	b.scheme(t, "dark")
	b.drawn(t)
	for name, size := range map[string]chromedp.PaperSize{"a4": chromedp.PaperA4, "letter": chromedp.PaperLetter} {
		pdf, err := chromedp.Run(b, chromedp.PrintToPDF(chromedp.PDFPaper(size)))
		if err != nil {
			t.Fatal(err)
		}
		if n := len(pdfPage.FindAll(pdf, -1)); n < 6 || n > 20 {
			t.Errorf("%s: %d pages", name, n)
		}
		if !bytes.Contains(pdf, []byte("/Font")) {
			t.Errorf("%s: no text on the pages", name)
		}
		if folder := os.Getenv("PICTURES"); folder != "" {
			if err := os.WriteFile(filepath.Join(folder, name+".pdf"), pdf, 0o600); err != nil {
				t.Fatal(err)
			}
		}
	}
	ask[bool](t, b, `dispatchEvent(new Event("beforeprint"))`)
	if n := ask[int](t, b, `document.querySelectorAll('[data-option="option-states"] path[fill="#DCE7E4"]').length`); n != 5+5+1 {
		t.Errorf("%d shapes in the light tint on paper, want five bars, their labels and the legend", n)
	}
	if n := ask[int](t, b, `document.querySelectorAll("details:not([open]):not(.off-paper)").length`); n != 0 {
		t.Errorf("%d tables stay folded on paper", n)
	}
	ask[bool](t, b, `dispatchEvent(new Event("afterprint"))`)
	if n := ask[int](t, b, `document.querySelectorAll("details[open]").length`); n != 0 {
		t.Errorf("%d tables stay unfolded after printing", n)
	}
	margins := ask[string](t, b, `[...document.styleSheets[0].cssRules].filter(r => r.type === 6).map(r => r.cssText).join()`)
	for _, want := range []string{"F1-07", "revision B", "status: draft", "5d0c1f0e9a7b4433", "tuckline 0.1", "counter(page)"} {
		if !strings.Contains(margins, want) {
			t.Errorf("the margins of the printed page lack %q: %s", want, margins)
		}
	}
	b.quiet(t)
}
