package report

import (
	"cmp"
	"fmt"
	"html/template"
	"math"
	"slices"
	"strings"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
)

// branchLook is how a kind of branch is called, and how it looks: a colour of the page or that of a state.
type branchLook struct{ word, colour string }

// key names the colour in the page.
func (l branchLook) key() string { return l.colour[strings.Index(l.colour, ":")+1:] }

var branchLooks = map[result.LossKind]branchLook{
	result.LossGood:       {"good", "state:running"},
	result.LossSamples:    {"samples", "colour:accent"},
	result.LossRejects:    {"rejects", "colour:accent"},
	result.LossScrap:      {"scrap", "colour:accent"},
	result.LossPockets:    {"pockets", "colour:faint"},
	result.LossSlower:     {"slower", "colour:faint"},
	result.LossStop:       {"stop", "state:down"},
	result.LossWaiting:    {"waiting", "state:waiting"},
	result.LossPlanned:    {"planned", "state:planned"},
	result.LossChangeover: {"changeover", "state:changeover"},
	result.LossBlocked:    {"blocked", "state:blocked"},
	result.LossStarved:    {"starved", "state:starved"},
}

// kindWords say a kind of branch.
func kindWords(kind result.LossKind) string { return say("tree."+branchLooks[kind].word, nil) }

// leastBranch is the share of time below which a branch is drawn with all others of the kind; what is
// below half of it stands in the table only.
const leastBranch = 0.002

// lossTreeSections say where the time of the stations that limit the line has gone.
func lossTreeSections(s *subject) ([]section, error) {
	var all []section
	for i, tree := range s.Results.LossTrees {
		if len(tree.Branches) == 0 {
			continue
		}
		heading := lossTreeHeading(tree)
		drawn := drawnBranches(tree.Branches)
		option, err := lossTreeOption(drawn, described(heading))
		if err != nil {
			return nil, err
		}
		id := fmt.Sprintf("loss-tree-%d", i)
		all = append(all, section{
			ID: id, Heading: heading, Reading: say("tree.reading", facts{"Station": tree.Station, "Least": rounded(50*leastBranch, -1) + thin + "%"}),
			Charts: []chart{{id, 70 + 30*len(drawn), option}}, Table: s.lossTreeTable(tree, heading),
		})
	}
	return all, nil
}

// lossTreeHeading names the largest losses, all that the intervals do not tell from the largest.
func lossTreeHeading(tree result.LossTree) string {
	good, losses := result.Estimate{}, []result.LossBranch{}
	for _, b := range tree.Branches {
		if b.Kind == result.LossGood {
			good = b.Share
		} else if b.Share.Mean > 0 {
			losses = append(losses, b)
		}
	}
	f := facts{"Station": tree.Station, "Good": percentWords(good.Mean), "Largest": "", "N": 0}
	slices.SortStableFunc(losses, func(a, b result.LossBranch) int { return cmp.Compare(b.Share.Mean, a.Share.Mean) })
	var largest []string
	for _, b := range losses {
		if b.Share.High >= losses[0].Share.Low && len(largest) < namedOrigins {
			largest = append(largest, say("tree.part", facts{"Branch": lossWords(b), "Share": percentWords(b.Share.Mean)}))
		}
	}
	f["Largest"], f["N"] = listed(largest), len(largest)
	return say("tree.heading", f)
}

// branchWords say a branch: its kind, and to what it goes back.
func branchWords(b result.LossBranch) string {
	kind := kindWords(b.Kind)
	if b.Kind == result.LossSlower && b.Share.Mean < 0 {
		kind = say("tree.faster", nil)
	}
	if b.Cause == "" {
		return kind
	}
	cause := causeWordsOf(b)
	if b.Kind == result.LossStop || b.Station == "" && b.Kind == result.LossPlanned {
		return cause
	}
	return say("tree.because", facts{"Kind": kind, "Cause": cause})
}

// lossWords say a branch within a sentence.
func lossWords(b result.LossBranch) string {
	if b.Cause == "" || b.Kind == result.LossStop || b.Station == "" && b.Kind == result.LossPlanned {
		return branchWords(b)
	}
	return say("tree.sentence", facts{"Kind": kindWords(b.Kind), "Cause": causeWordsOf(b)})
}

// causeWordsOf is to what a branch goes back.
func causeWordsOf(b result.LossBranch) string {
	if b.Station == "" && b.Kind == result.LossPlanned {
		return b.Cause // a span of the calendar
	}
	return wait{origin: result.Origin{Station: b.Station, Cause: b.Cause}}.causeName()
}

// drawnBranches are the branches of the chart: small ones of a kind are drawn as one.
func drawnBranches(all []result.LossBranch) []result.LossBranch {
	var drawn []result.LossBranch
	for _, b := range all {
		last := len(drawn) - 1
		switch {
		case math.Abs(b.Share.Mean) >= leastBranch || b.Cause == "":
			drawn = append(drawn, b)
		case last >= 0 && drawn[last].Kind == b.Kind && drawn[last].Cause == "":
			drawn[last].Share = sumOf(drawn[last].Share, b.Share)
		default:
			drawn = append(drawn, result.LossBranch{Kind: b.Kind, Share: b.Share})
		}
	}
	return slices.DeleteFunc(drawn, func(b result.LossBranch) bool { return math.Abs(b.Share.Mean) < leastBranch/2 })
}

// sumOf is a sum with an interval that is rather too wide than too narrow.
func sumOf(a, b result.Estimate) result.Estimate {
	return result.Estimate{Mean: a.Mean + b.Mean, Low: a.Low + b.Low, High: a.High + b.High, N: a.N}
}

// lossTreeOption is a staircase from the good output to all of the time: each branch begins where the one
// before it ends.
func lossTreeOption(branches []result.LossBranch, aria string) (template.JS, error) {
	var labels []string
	var below, steps []opts.BarData
	var counts []opts.ScatterData
	sum, place := 0.0, placeOfBranches(branches)
	for i, b := range branches {
		from, to := sum, sum+100*b.Share.Mean
		sum = to
		f := facts{"Branch": branchWords(b), "Share": atPlace(b.Share, 100, place)}
		labels = append(labels, say("tree.label", facts{"Branch": branchWords(b), "Others": b.Cause == "" && named(branches, b.Kind)}))
		below = append(below, opts.BarData{Value: round3(min(from, to))})
		steps = append(steps, opts.BarData{Name: say("tree.tip", f), Value: round3(math.Abs(to - from)), ItemStyle: &opts.ItemStyle{Color: branchLooks[b.Kind].colour}})
		before := min(from, to)
		if b.Kind == result.LossGood {
			before = to // there is room in its own bar only
		}
		counts = append(counts, opts.ScatterData{Name: say("tree.share", f), Value: []any{round3(before), i}})
	}
	bar := charts.NewBar()
	stack := charts.WithBarChartOpts(opts.BarChart{Stack: "time", BarCategoryGap: "30%"})
	bar.AddSeries("", below, stack, charts.WithItemStyleOpts(opts.ItemStyle{Color: "transparent"}))
	bar.AddSeries("", steps, stack)
	bar.SetXAxis(labels).XYReversal()
	beside := charts.NewScatter()
	beside.AddSeries("", counts, colour("ink"), charts.WithScatterChartOpts(opts.ScatterChart{SymbolSize: 1}),
		charts.WithLabelOpts(opts.Label{Show: opts.Bool(true), Position: "left", Formatter: "fn:name", Color: "colour:ink"}))
	bar.Overlap(beside)
	bar.SetGlobalOptions(append(frame(aria), noLegend(), plot("8", "24", "24"),
		charts.WithXAxisOpts(percentAxis()), charts.WithYAxisOpts(names(labels)))...)
	return optionOf(bar)
}

// placeOfBranches is the power of ten for all shares of a tree.
func placeOfBranches(branches []result.LossBranch) int {
	shares := make([]result.Estimate, len(branches))
	for i, b := range branches {
		shares[i] = b.Share
	}
	return sharesPlace(shares)
}

// named says that branches of a kind have a cause: one without is all others of the kind.
func named(branches []result.LossBranch, kind result.LossKind) bool {
	return slices.ContainsFunc(branches, func(b result.LossBranch) bool { return b.Kind == kind && b.Cause != "" })
}

func (s *subject) lossTreeTable(tree result.LossTree, caption string) table {
	var kind, cause []string
	var share, overlap []result.Estimate
	for _, b := range tree.Branches {
		of := ""
		if b.Cause != "" {
			of = causeWordsOf(b)
		}
		kind, cause = append(kind, kindWords(b.Kind)), append(cause, of)
		share, overlap = append(share, b.Share), append(overlap, b.Overlap)
	}
	head := append(heads("tree", "waits.cause", "waits.share"), say("column.minutes", facts{"Window": s.Window.One}), say("column.overlap", nil))
	t := tableOf(caption, head, 2, textColumn(kind), textColumn(cause), sharesColumn(share), columnOf(share, 60*s.Window.Hours), sharesColumn(overlap))
	t.Note = say("tree.note", facts{"Length": short3(s.Window.Hours) + thin + "h", "Slower": s.slowerBy(tree.Station)})
	return t
}
