package report

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/sim"
)

// coloured counts the shapes of every chart by fill, or by line where there is
// no fill. A kind of chart that the engine lacks draws nothing and says
// nothing, so that only counting finds it.
const coloured = `Object.fromEntries([...document.querySelectorAll(".chart")].map(chart => {
	const count = {};
	for (const e of chart.querySelectorAll("svg path")) {
		const fill = e.getAttribute("fill"), line = e.getAttribute("stroke");
		const key = fill === "none" || fill === "#000" ? "line " + line : fill.startsWith("url") ? "pattern" : fill;
		count[key] = (count[key] || 0) + 1;
	}
	return [chart.dataset.option.slice(7), count];
}))`

// shapes are the numbers of shapes that the invented outcome must give. In
// most counts by a colour of the data one more is the mark in the legend.
func shapes(s *subject) map[string]map[string]int {
	edges, _ := bins(s.Shifts)
	states := map[string]int{"pattern": 6 + 6 + 6}
	waits := map[string]int{"#56B4E9": 5 + 1, "#E69F00": 5 + 1, "line #56B4E9": 5, "line #E69F00": 5}
	want := map[string]map[string]int{
		"spread": {"#0072b240": len(edges) - 1, "line #1b1f22": 3},
		"mean":   {"#0072b2": 39 + 1, "#0072b240": 1 + 1},
		"states": states, "waits": waits,
		"level-0": {"#0072b2": 51, "line #0072b2": 1},
		"level-1": {"#0072b2": 51, "line #0072b2": 1, "line #5c666d": 1},
		"stops":   {"#D55E00": 15, "line #1b1f22": 3 * 15},
		"losses":  {"#0072b2": 5 + 1, "line #1b1f22": 3 * (5 + 1)},
		"rates":   {"#5c666d": 5 + 1, "#1b1f22": 5 + 1, "#0072b2": 2 * (5 + 1), "line #0072b2": 2 * (1 + 1)},
	}
	// Starved, blocked and waiting have a pattern, and a mark in the legend each.
	patterns := 3
	for i := range s.Results.Stations {
		for _, one := range stretches(s.Trace.States, i, s.traced()) {
			if one.State == sim.Starved || one.State == sim.Blocked || one.State == sim.Waiting {
				patterns++
			}
		}
	}
	want["timeline"] = map[string]int{"pattern": patterns}
	return want
}

func TestEveryChartIsDrawn(t *testing.T) {
	o := inventedOutcome()
	b := openTab(t, written(t, Page{Outcome: o, Version: "tuckline 0.1"}), 1200, 900)
	b.drawn(t)
	got := ask[map[string]map[string]int](t, b, coloured)
	want := shapes(subjectOf(o))
	if len(got) != len(want) {
		t.Errorf("%d charts, want %d", len(got), len(want))
	}
	for chart, counts := range want {
		for colour, n := range counts {
			if got[chart][colour] != n {
				t.Errorf("chart %s: %d shapes of %s, want %d; all: %v", chart, got[chart][colour], colour, n, got[chart])
			}
		}
	}
	b.picture(t, "light")
	b.quiet(t)
}

func TestChartsSpeakToWhoDoesNotSeeThem(t *testing.T) {
	b := openTab(t, written(t, Page{Outcome: inventedOutcome()}), 1200, 900)
	b.drawn(t)
	const labels = `[...document.querySelectorAll(".chart")].map(c => c.getAttribute("role") + ": " + c.getAttribute("aria-label"))`
	got := ask[[]string](t, b, labels)
	want := "img: " + say("aria", facts{"Heading": "The cartoner is starved 8.3" + thin + "% and blocked 0.3" + thin + "% of the time"})
	if diff := cmp.Diff(want, got[3]); diff != "" {
		t.Error(diff)
	}
	for i, label := range got {
		if len(label) < 30 {
			t.Errorf("chart %d says only %q", i, label)
		}
	}
}

func TestTheTimelineCanBeZoomed(t *testing.T) {
	b := openTab(t, written(t, Page{Outcome: inventedOutcome()}), 1200, 900)
	b.drawn(t)
	const count = `document.querySelectorAll('[data-option="option-timeline"] svg path').length`
	before := ask[int](t, b, count)
	// The left handle of the slider is dragged to the middle of the chart.
	ask[bool](t, b, `(document.getElementById("timeline").scrollIntoView(), true)`)
	box := ask[[]float64](t, b, `(() => {
		const h = [...document.querySelectorAll('[data-option="option-timeline"] svg path')].filter(e => e.getAttribute("stroke") === "#0072b2" && e.getAttribute("fill") === "#ffffff");
		const r = h[0].getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2];
	})()`)
	drag(t, b, box[0], box[1], box[0]+500, box[1])
	if after := ask[int](t, b, count); after >= before {
		t.Errorf("%d shapes before zooming in, %d after", before, after)
	}
	b.picture(t, "zoomed")
	b.quiet(t)
}

// overflow fails if the page is wider than its window.
func overflow(t *testing.T, b *tab) {
	t.Helper()
	got := ask[[]int](t, b, `[document.documentElement.scrollWidth, innerWidth]`)
	if got[0] > got[1] {
		wide := ask[string](t, b, `[...document.querySelectorAll("body *")].filter(e => e.getBoundingClientRect().right > innerWidth + 1 && !e.closest(".scroll, pre, .chart")).map(e => e.tagName + "." + e.className).join(" ")`)
		t.Errorf("the page is %d wide in a window of %d: %s", got[0], got[1], wide)
	}
}
