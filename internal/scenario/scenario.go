// Package scenario reads scenario files: YAML in, a checked model out, and
// every complaint with its place.
package scenario

import "tuckline/sim"

// Scenario is a scenario file that has been read and checked.
type Scenario struct {
	// File is its name as given; Source its text, with the values of --set in it.
	File   string
	Source []byte

	Title, Question string
	Project         Project
	Product         Product
	Answer          Answer
	Run             Run
	KeyFigures      KeyFigures
	// Agreement is the zero value where none is written.
	Agreement Agreement
	// Calendar is the working time; nil without one.
	Calendar *Calendar
	// Orders say of Line.Orders what people want to know; nil without orders.
	Orders *Orders
	// Lines are the lines of the file, in its order; one without a name where it has line:.
	Lines []ProductionLine
	Line  sim.Line
	// Stations and Buffers say more of Line.Stations and Line.Buffers, in the same order.
	Stations []Station
	Buffers  []Buffer
	// Warnings are whole sentences: what was read and is not what it may seem.
	Warnings []string

	// names are those of the line, laws their parameters for the hash.
	names, laws []string
	// asked is the window as written; with an automatic warm-up a study may double it.
	asked sim.Micros
}

// Project says for whom the study is.
type Project struct {
	Client, Number, Revision, Status string
}

// Product is the format sheet. Zero means not given.
type Product struct {
	Name string
	// Dose is "tablet" or "capsule"; MassMilligrams is of one of them.
	Dose           string
	MassMilligrams float64
	// DosesPerBlister to BundlesPerCase are pieces.
	DosesPerBlister, BlistersPerCarton, CartonsPerBundle, BundlesPerCase, CartonsPerCase int64
	// BlisterLength and BlisterWidth are in micrometres.
	BlisterLength, BlisterWidth sim.Micrometres
}

// Answer says what is counted where.
type Answer struct {
	// Unit is the plural as written: "cartons".
	Unit string
	// CountedAfter are indexes in Line.Stations, at least one, rising: what these
	// stations pass on is added up. None stands downstream of another.
	CountedAfter []int
	// Per is "hour", "shift" or "week"; without a calendar a shift and a week are the measured window.
	Per string
}

// Run says how the line is simulated.
type Run struct {
	// WarmUp is T0 and Measure the length of the window in engine time. With a calendar they hold time that is not
	// scheduled too; Scenario.ScheduledWarmUp and ScheduledMeasure are without it.
	WarmUp, Measure sim.Micros
	// Starts is the clock of engine time 0, such as "Mon 06:00"; empty without a calendar.
	Starts string `json:",omitempty"`
	// UntilOrders says that a replication ends when its orders are finished; after WarmUp and Measure at the latest.
	UntilOrders bool `json:",omitempty"`
	// AutoWarmUp says that the warm-up is to be found by a pilot; WarmUp is then 0.
	AutoWarmUp bool
	// Replications is their number; with a half-width to be reached it equals AtMost.
	Replications int
	// HalfWidth is the half-width of the interval of the answer to be reached, as a share
	// of its mean: replications are added until then, AtMost at most. Both are 0 with a
	// fixed number of replications.
	HalfWidth float64
	AtMost    int
	// Confidence is between 0 and 1.
	Confidence float64
	Seed       uint64
}

// Station is what the model of a station does not need but people do.
type Station struct {
	// TakesUnit and GivesUnit are plurals: "blisters"; "pieces" where none is written.
	TakesUnit, GivesUnit string
	// SetCycle and TopCycle are the mean cycle times at set and at top speed, in microseconds;
	// TopCycle equals SetCycle where no top speed is written.
	SetCycle, TopCycle float64
	Web                Web
	// Forming is "thermoform", "cold form" or empty.
	Forming string
	Sealing Sealing
	// Guaranteed is the contract efficiency of the machine alone, 0 to 1; 0 is none. It is for people, not
	// for the model.
	Guaranteed float64
	// Materials are in the order of Line.Stations[i].Materials.
	Materials []Material
}

// Web is the format of a web; zero means not given.
type Web struct {
	Width, Index  sim.Micrometres
	Across, Along int64
}

// Sealing has the share of the cycle in which the tool is closed and the
// qualified range of that time, in microseconds; zero means not given.
type Sealing struct {
	DwellShare         float64
	DwellMin, DwellMax sim.Micros
}

// Material is what people say of a stock: its kind is "reel", "magazine" or "hopper".
type Material struct {
	Kind string
	// Unit is the plural of pieces ("blanks"), or "m" for web.
	Unit string
	// Outer, Core, Thickness and Unusable belong to reels of web, in micrometres.
	Outer, Core, Thickness, Unusable sim.Micrometres
	// AlarmAt is the stock at which a refill is asked for; -1 without alarm.
	AlarmAt int64
}

// Buffer is what people say of a place between stations.
type Buffer struct {
	// Unit is the plural of its pieces.
	Unit string
	// Length, Pitch are of a conveyor, in micrometres; Speed in micrometres per second.
	Length, Pitch sim.Micrometres
	Speed         float64
}
