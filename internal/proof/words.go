package proof

import (
	"fmt"
	"math"
	"strconv"
)

// The verdicts of figures without chance that agree but are not simply exact: a line that comes near
// to the model only, values drawn with a fixed seed, a count of allocations above the best.
const (
	toTheAllowance = "agrees to the allowance"
	agrees         = "agrees"
	noneAbove      = "none above"
)

// Verdict says in words how a figure came out.
func (r *Row) Verdict() string {
	switch {
	case r.Sure && r.Inside && r.says == agrees:
		return fmt.Sprintf("agrees to %.2g", r.Tolerance)
	case r.Sure && r.Inside && r.says != "":
		return r.says
	case r.Sure && r.Inside:
		return "exact"
	case r.Sure && r.says == noneAbove:
		return "FAULT: some above"
	case r.Sure && r.says == agrees:
		return "FAULT: does not agree"
	case r.Sure:
		return "FAULT: not exact"
	case r.Inside && r.Allowance > 0 && r.WithoutAllowance():
		return "inside, without the allowance too"
	case r.Inside && r.Allowance > 0:
		return "inside with the allowance"
	case r.Inside:
		return "inside"
	case r.Fault:
		return "FAULT: outside twice"
	case r.Again.Inside:
		return "outside, repeated: inside"
	}
	return "outside twice; among so many figures that is chance"
}

// ExactText is the known value with seven digits.
func (r *Row) ExactText() string { return strconv.FormatFloat(r.Exact, 'g', 7, 64) }

// Interval is ours: low to high, with the digits that the width deserves.
func (r *Row) Interval() string {
	if r.Sure || r.Low == r.High {
		return strconv.FormatFloat(r.Ours, 'g', 7, 64)
	}
	places := decimals(r.High - r.Low)
	return strconv.FormatFloat(r.Low, 'f', places, 64) + " to " + strconv.FormatFloat(r.High, 'f', places, 64)
}

// AllowanceText is empty where there is none.
func (r *Row) AllowanceText() string {
	if r.Allowance == 0 {
		return ""
	}
	return fmt.Sprintf("± %.2g", r.Allowance)
}

// decimals is how many of them show two digits of a width.
func decimals(width float64) int {
	if width <= 0 {
		return 6
	}
	return min(max(1-int(math.Floor(math.Log10(width))), 0), 12)
}

// Answer is the result in a few sentences.
func (o *Outcome) Answer() []string {
	faults := len(o.Faults())
	if o.Cases+o.Allowed == 0 {
		return []string{counted(o.Sure, "figure") + " computed without an interval; no case was simulated.", o.found(faults, "Every figure agrees: no fault was found.")}
	}
	first := fmt.Sprintf("%s simulated, with %s; %s more computed without an interval.", counted(o.Cases+o.Allowed, "case"), counted(len(o.Rows)-o.Sure-o.Zeros, "figure"), counted(o.Sure, "figure"))
	if o.Zeros > 0 {
		first += fmt.Sprintf(" %s that can only be 0 must be 0 to the last digit; they are counted in neither.", counted(o.Zeros, "figure"))
	}
	all := []string{o.whole(), first}
	if o.Cases > 0 {
		all = append(all, fmt.Sprintf("Of the first figures of %s, %d lay outside the 99 %% interval; %.1f are expected if everything is right, and a count at least so unusual comes up in %s of such tables.", counted(o.Cases, "case"), o.Outside, o.Expected(), percent(o.PValue)))
	}
	if o.Allowed > 0 {
		all = append(all, fmt.Sprintf("Not counted: %s with an allowance, since the line only comes near to the model of the source; %d inside, %d of them without the allowance too.", counted(o.Allowed, "case"), o.Allowed-o.Missed, o.Close))
	}
	return append(all, o.found(faults, "No figure was outside twice: no fault was found."))
}

// whole says what became of the reference cases.
func (o *Outcome) whole() string {
	all := o.Tallies()
	t := all[len(all)-1]
	text := fmt.Sprintf("%s: %d simulated, %d computed without an interval", counted(t.Reference, "reference case"), t.Simulated, t.Computed)
	if t.Later > 0 {
		text += fmt.Sprintf(", %d only in the full set", t.Later)
	}
	return text + fmt.Sprintf(", %d left out whole; %s of others left out.", t.LeftOut, counted(t.Parts, "figure"))
}

// found says whether there are faults; none is the sentence without.
func (o *Outcome) found(faults int, none string) string {
	text := none
	switch {
	case faults == 1:
		text = "1 figure is a fault: see the line marked so."
	case faults > 1:
		text = fmt.Sprintf("%d figures are faults: see the lines marked so.", faults)
	}
	if o.TooMany {
		text += " More cases were outside than chance explains; that is a fault too."
	}
	return text
}

// Failed says that something is wrong.
func (o *Outcome) Failed() bool { return o.TooMany || len(o.Faults()) > 0 }

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func percent(p float64) string {
	if p < 0.001 {
		return "fewer than 0.1 %"
	}
	return strconv.FormatFloat(100*p, 'g', 3, 64) + " %"
}

// rules is how the figures were compared.
var rules = []string{
	"Every case has its own random numbers: the seed is the hash of its name. Nobody chooses it and it never changes.",
	"Replications are raised until the half-width of the 99 % interval is at most 0.3 % of the exact value (in the quick set 1 %; 5 % for standard deviations, variances and probabilities under 0.05). The rule looks at widths only, never at whether a value is inside.",
	"A run warms up for at least 20 times the longest mean repair, time between stops or busy period before it is measured. Cases that ask for the first hours of a new line have no warm-up.",
	"A figure outside is repeated once, with nine times the replications and the seed of the name with \", second\". Outside again is a fault.",
	"One figure of each case, its first, is counted; the count is held against the 1 in 100 that miss by chance. The others depend on each other: those outside are repeated too, and what then remains is judged together with Holm's correction.",
	"Formulas, courses of a line without chance and tables drawn once with a fixed seed have no interval and are counted apart. \"Exact\" is equal to the rounding of the computer, 1 in a thousand million; \"agrees to\" names the tolerance of the source; \"none above\" says that of all allocations none is better than the named one by more than chance.",
	"Where a line only comes near to the model of the source, as many small pieces to a flow, the allowance is shown beside the figure, and the verdict says whether the value lies inside without it. Such cases are not among those that are counted.",
	"The quick set is chosen by cost alone: the cases that take the least work to come to 1 %, and of every family at least one.",
}

// Limits is what all this does not show.
func (o *Outcome) Limits() []string {
	return append([]string{"The known values are not all of one kind, and each says of which. Of the figures here: " + o.kinds() + "."}, limits...)
}

var limits = []string{
	"It does not show that a scenario describes somebody's line. A right calculation with wrong stop times is wrong.",
	"It does not show the features for which no exact result is known, such as restart levels, speed steps, ramps, belts between several stations or groups of cartons. Other tests hold these against courses by hand.",
	"An interval of 0.3 % cannot see an error of 0.1 %.",
	"It says nothing about the computer, the person or the file behind a later result.",
}
