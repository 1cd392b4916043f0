package report

import (
	"slices"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/internal/study"
	"tuckline/sim"
)

// span is the scale from no buffer at all to buffers without limit. Places on
// it are in percent of its length.
type span struct {
	Shown    bool
	Unit     string
	Marks    []mark
	Sentence string
}

// mark is a value on the span with its interval.
type mark struct {
	Key, Words, Value string
	At, From, Width   float64
	// Side keeps a label inside the page: start, middle or end.
	Side string
}

func (s *subject) span() span {
	b := s.Span
	view := span{Unit: say("span.unit", facts{"Unit": s.Results.Output.Unit}), Shown: b.Unlimited.N > 0 && !makesNothing(b), Sentence: s.spanWords()}
	if view.Shown {
		view.Marks = marks(b)
	}
	return view
}

func (s *subject) spanWords() string {
	b := s.Span
	recovered := numberOf(b.Recovered, 100)
	belts, outside, returns := belted(s.Scenario), s.outside(), listed(returning(s.Scenario))
	switch {
	case !b.Buffered:
		return say("span.unbuffered", facts{"Belts": belts})
	case b.Locked:
		return say("span.locked", nil)
	case b.Unfinished:
		return say("span.unfinished", facts{"Horizon": study.Horizon(s.Scenario)})
	case b.Unlimited.N == 0:
		return say("span.interrupted", nil)
	case makesNothing(b):
		return say("span.zero", nil)
	case b.Costs():
		return say("span.costs", facts{"Now": numberOf(b.Now, 1), "None": numberOf(b.None, 1), "Unit": s.Results.Output.Unit, "Belts": belts, "Outside": outside, "Returns": returns, "Filling": onlyFill(s.Scenario)})
	case b.Worse():
		return say("span.worse", facts{"Belts": belts, "Outside": outside, "Returns": returns})
	case b.Recovered.N == 0:
		return say("span.nothing", facts{"Unlimited": numberOf(b.Unlimited, 1), "Unit": s.Results.Output.Unit, "Belts": belts, "Outside": outside, "Returns": returns})
	default:
		return say("span.recovered", facts{"Recovered": recovered.Mean, "Range": recovered.Range(), "Belts": belts, "Outside": outside, "Returns": returns})
	}
}

// makesNothing says that no pieces come out, neither as entered nor without limit.
func makesNothing(b study.Span) bool { return b.Now.High <= 0 && b.Unlimited.High <= 0 }

// belted says that the line has belts, which stay when buffers are taken away.
func belted(s *scenario.Scenario) bool {
	return slices.ContainsFunc(s.Line.Buffers, func(b sim.Buffer) bool { return b.Conveyor })
}

// returning are the hand magazines to which pieces come back: without them nothing does.
func returning(s *scenario.Scenario) []string {
	var names []string
	for _, b := range s.Line.Buffers {
		if b.Returns.Share > 0 {
			names = append(names, b.Name)
		}
	}
	return names
}

// onlyFill says that no buffer has stops, rates, levels, sensors or people of its own: all that it costs is what lies in it.
func onlyFill(s *scenario.Scenario) bool {
	return !slices.ContainsFunc(s.Line.Buffers, func(b sim.Buffer) bool {
		binds := len(b.Stops) > 0 || b.In > 0 || b.Out > 0 || b.Surplus > 0 || b.Hand != (sim.Hand{})
		return !b.Conveyor && (binds || b.StopUpstream > 0 || b.Restart.On || b.Start.On || b.Full.On)
	})
}

func marks(b study.Span) []mark {
	low := min(b.None.Low, b.Now.Low, b.Unlimited.Low)
	high := max(b.None.High, b.Now.High, b.Unlimited.High)
	if !b.Buffered {
		low = min(b.Now.Low, b.Unlimited.Low)
	}
	at := func(v float64) float64 {
		if high <= low {
			return 50
		}
		return 100 * (v - low) / (high - low)
	}
	// All with the digits of the answer, which stands above them.
	place := placeOf(halfWidth(b.Now), b.Now.Mean)
	put := func(key string, e result.Estimate) mark {
		return mark{
			Key: key, Words: say("span."+key, nil), Value: atPlace(e, 1, place).String(),
			At: at(e.Mean), From: at(e.Low), Width: at(e.High) - at(e.Low), Side: side(at(e.Mean)),
		}
	}
	if !b.Buffered {
		return []mark{put("now", b.Now), put("unlimited", b.Unlimited)}
	}
	return []mark{put("none", b.None), put("now", b.Now), put("unlimited", b.Unlimited)}
}

func side(at float64) string {
	switch {
	case at < 30:
		return "start"
	case at > 70:
		return "end"
	default:
		return "middle"
	}
}
