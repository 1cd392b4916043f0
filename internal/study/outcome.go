package study

import (
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// Outcome is everything that one study of one scenario found: what reports and
// files are made from. Nothing behind it computes anything new.
type Outcome struct {
	Scenario *scenario.Scenario
	Model    *sim.Model
	// Records are in the order of replication, those included that Counted leaves out of the estimates.
	Records []sim.Record
	Results result.Results
	// Shifts are the good pieces of the answer of single windows, by replication: of the whole shifts of a calendar that lie in the
	// measured ones, where the answer is per shift. They are nil where there are none to compare.
	Shifts []float64
	// MeanShift says that the total of the results is that of the mean shift of the calendar, from whole shifts.
	MeanShift bool
	// RunningMean has the estimate of the total of the results after 2, 3, … replications; nil where runs end with their orders.
	RunningMean []result.Estimate
	Span        Span
	// Constraint is the station that limits the line, or several side by side; Causes are what else than good output its time went to, worst first.
	Constraint string
	Causes     []Cause
	// Classes has, for each place between stations, the mean share of the window in each class of level.
	Classes [][]float64
	// Ages are the times that the good pieces of all replications have been in the line; nil unless a measure needs them.
	Ages *sim.Ages
	// UsedUp is about replications that ended before the end of the window.
	UsedUp UsedUp
	// Trace is of the first replication, from time 0. Its window begins at TracedFrom, the end
	// of the warm-up or a day if that is longer, and lasts for Traced: the window of the
	// study, or the first day of it. Both are 0 without a trace.
	Trace              sim.Trace
	TracedFrom, Traced sim.Micros
	// WarmUp says how the warm-up was found, Precision how a half-width asked for was reached.
	WarmUp    WarmUp
	Precision Precision
	// Interrupted says that fewer replications were finished than asked for, of the line or of its span.
	Interrupted bool
}

// Span is the scale from no buffer at all to buffers without limit, both
// simulated with the same random numbers, in pieces of the answer per hour.
type Span struct {
	// Buffered is false for a line without a buffer that could be taken away, or where the span was
	// not asked for. N of its estimates is 0 if it was interrupted or an end of it locks.
	Buffered             bool
	None, Now, Unlimited result.Estimate
	// Recovered is (now - none) / (unlimited - none), of the means over replications. Its N is
	// 0 where no gain can be told from chance, or the line without limit is worse.
	Recovered result.Estimate
	// Shared says that a station which sends to the first with room sent to the one with the fewest
	// pieces in the line without limit, where the first is never full.
	Shared bool
	// Unfinished says that fewer than two replications finish their orders at both ends of the span and as entered. Compared is how
	// many replications all three have.
	Unfinished bool
	Compared   int
	// Locked says that an end of the span locks.
	Locked bool
}

// Worse says that the line made less with buffers without limit than as entered,
// by more than chance: the two intervals lie apart, and by more than what is shown.
func (s Span) Worse() bool { return s.Unlimited.N > 0 && less(s.Unlimited, s.Now) }

// Costs says that the line makes less as entered than without its buffers, by more than chance: their own
// stops, their rates, or the people that they bind cost more than they recover.
func (s Span) Costs() bool {
	return s.None.N > 0 && (less(s.Now, s.None) || s.Recovered.N > 0 && s.Recovered.High < 0)
}

// less says that an estimate lies below another, interval apart, by more than one in ten thousand: a difference of one
// piece in days is no news.
func less(a, b result.Estimate) bool { return a.High < b.Low && b.Mean-a.Mean > 1e-4*b.Mean }

// UsedUp says how many replications ended because their input was used up and
// nothing moved any more, and how many hours after their start, warm-up included.
type UsedUp struct {
	N          int
	AfterHours result.Estimate
}

// Cause is a reason why time of the constraint was no good output.
type Cause struct {
	// Kind is that of the branches of the loss tree that are in it; a stop has its waiting for the crew in it.
	Kind result.LossKind
	// Stop is the name of a stop, or of a span of the calendar in which the line stands; Stations are whose stop it is: the
	// constraint itself, or stations that stop it too (stops with). There are several if stations side by side limit the line.
	// Both are empty for all other kinds.
	Stop     string
	Stations []string
	// At are the limiting stations whose time it is.
	At []string
	// Minutes and Pieces of the answer are per shift or week of the calendar where the answer is per one, otherwise per window, summed over these stations; pieces are minutes at set speed.
	Minutes, Pieces result.Estimate
}
