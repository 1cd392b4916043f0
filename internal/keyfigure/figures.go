package keyfigure

import "tuckline/internal/scenario"

// Figures are the derived figures of one scenario. "Answer pieces" are pieces
// of the unit of the answer, counted after the stations that the scenario names.
type Figures struct {
	Title, Question string
	// Unit is the plural of the answer's pieces.
	Unit string
	// CountedAfter names the stations after which they are counted, in the order of the line.
	CountedAfter []string
	// Stations are in the order of Scenario.Line.Stations.
	Stations []Station
	// Places are the buffers and conveyors in the order of Scenario.Line.Buffers,
	// then the hand-overs that the program put.
	Places []Place
	// Way is the order of the product: feeders before what they feed.
	Way []Entry
	// Stages are the points of the V-curve, in the order of the product.
	Stages []Stage
	Bounds Bounds
	Crews  []CrewLoad
	// Working is nil without a calendar.
	Working *WorkingTime
	Staff   []Staff
	// Orders are the batches, alike ones together, SetUps the changeovers of one round of the list; WithoutEnd says
	// that it comes again and again.
	Orders     []Order
	SetUps     []SetUps
	WithoutEnd bool
	// Agreed is nil where nothing is agreed.
	Agreed *Agreed
	// several are the lines; nil with one.
	several  []scenario.ProductionLine
	Warnings []string
}

// Entry is one stop on the way along the line: a station or a place.
type Entry struct {
	// Place says that Index counts in Figures.Places, otherwise in Figures.Stations.
	Place bool
	Index int
}

// Rate is one speed in three units, each per minute.
type Rate struct {
	Cycles float64
	// Pieces are those the station gives.
	Pieces float64
	// Answer is in answer pieces.
	Answer float64
}

// Place has the figures of a buffer, a conveyor or a hand-over.
type Place struct {
	Name, Unit string
	// Kind is "conveyor", "buffer" or "hand-over".
	Kind     string
	From, To []string
	// Capacity is in pieces, -1 without limit.
	Capacity int64
	// Stacks says of a hand-over that it has room for one stack that is collected beside one that waits for its pocket.
	Stacks bool
	// TransitSeconds is the time from entrance to exit.
	TransitSeconds float64
	// Feed is what its feeders give at set speed, Drain what its consumers take at top speed, pieces/min.
	Feed, Drain float64
	// InTransit is Feed × transit, at most the capacity; Spare is the usable buffer: Capacity - InTransit.
	InTransit, Spare float64
	// Overfull says that the feed at set speed needs more places in transit than there are.
	Overfull bool
	// SpareSeconds is Spare in seconds of feed, Minutes is Capacity in minutes of feed.
	SpareSeconds, Minutes float64
	// DrainMinutes is the time from full to empty while the feeders run at set speed:
	// (Capacity - Keeps)/(Drain - Feed), by its own rates where these are lower; 0 if it never empties then.
	DrainMinutes float64
	// Lies is "beside the line" or "hand magazine"; empty means in the line.
	Lies string
	// Stands says of a belt that it does not accumulate.
	Stands bool
	// Keeps is the number of pieces that always stay; Spare is without them.
	Keeps int64
	// InMost, OutMost and SurplusMost are the rates of the store itself, pieces/min; 0 without limit.
	InMost, OutMost, SurplusMost float64
	// Sensor is nil without one.
	Sensor *SensorPlaces
	stops  bool    // it has stops of its own
	frees  float64 // pieces a minute by which it gets emptier while the feeders run at set speed
	// Covers are the free places that the stops behind a store need.
	Covers []Cover
	// StopUpstream and Restart are levels in pieces, 0 where not given.
	StopUpstream, Restart int64
	// Start is the level at which a station behind it that was starved starts again; 0 where not given.
	Start int64
}

// Stage is one point of the V-curve: a station, or stations side by side whose flows add up.
type Stage struct {
	Stations []int
	// Flow is the share of the line's flow that passes here; below 1 where a
	// branch has more stations than those beside it.
	Flow float64
	// Set, Top, Effective and AtMost are sums in answer pieces per minute.
	Set, Top, Effective, AtMost float64
	// OverSpeed is Top over the line at set speed (Bounds.AtSet), of which Flow passes, less 1.
	OverSpeed float64
}

// Bounds are the ends between which the line's long-run output lies, in answer pieces per minute.
type Bounds struct {
	// Unlimited is the bound with buffers without limit: the smallest mean
	// effective rate at the fastest speeds in use. Source: min of rate × availability.
	Unlimited float64
	// Constraint names the station, or stations side by side, that set it; a store too whose own
	// rate does.
	Constraint []string
	// Gated says that the rate of a store is among them.
	Gated bool
	// AtSet is the bound at set speed with nothing stopped and nothing rejected.
	AtSet float64
	// Rigid is the output of a line without any buffer: Tied × RigidEfficiency.
	Rigid float64
	// Tied is the lowest set rate, in good pieces at the count.
	Tied float64
	// RigidEfficiency is 1/(1 + sum of down shares), times the calendar stops; side by side each
	// part of the flow has its own. Source: bufferless chain, operation-dependent stops, all rates tied.
	RigidEfficiency float64
	// Buffered says that the line has a buffer beyond hand-overs.
	Buffered bool

	together bool // the stations of Constraint stand in branches side by side
}
