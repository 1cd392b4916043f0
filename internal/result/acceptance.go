package result

// Acceptance is the results.json of an acceptance study: how likely the agreed run is passed.
type Acceptance struct {
	Format       int             `json:"format"`
	Title        string          `json:"title"`
	ScenarioHash string          `json:"scenario_hash"`
	Seed         uint64          `json:"seed"`
	Confidence   float64         `json:"confidence"`
	Agreement    AgreedRun       `json:"agreement"`
	LongRunHours float64         `json:"long_run_hours"`
	AsEntered    AcceptancePoint `json:"as_entered"`
	// Curve is the operating characteristic, by rising true efficiency.
	Curve []AcceptancePoint `json:"curve"`
	// RunLength says how long the run has to be.
	RunLength RunLength `json:"run_length"`
	Formula   Formula   `json:"formula"`
	Warnings  []string  `json:"warnings"`
}

// AgreedRun is what is agreed.
type AgreedRun struct {
	Efficiency         float64 `json:"efficiency"`
	Of                 string  `json:"of"`
	RunHours           float64 `json:"run_h"`
	ScheduledFromHours float64 `json:"scheduled_from_h"`
	Unit               string  `json:"unit"`
	// FullPerHour is an efficiency of 100 %, in pieces of the answer; Needed is what the run must make.
	FullPerHour float64 `json:"full_per_hour"`
	Needed      float64 `json:"needed"`
	// Runs is how many were simulated for each point.
	Runs int `json:"runs"`
}

// AcceptancePoint is a line of one true efficiency.
type AcceptancePoint struct {
	// True is the long-run efficiency, its interval being that of the long runs; Factor multiplies how often every stop comes.
	True   Estimate `json:"true_efficiency"`
	Factor float64  `json:"stop_rate_factor"`
	// Passing is the share of runs that show at least the agreed efficiency, with Wilson's interval.
	Passing Estimate `json:"passing"`
	// Shown is the efficiency of single runs: mean and standard deviation.
	Shown Estimate `json:"shown_efficiency"`
	// Formula is what the asymptotic renewal formula says; its shares are 0 where it does not apply.
	Formula PointFormula `json:"formula"`
}

// PointFormula is the asymptotic renewal formula at one true efficiency.
type PointFormula struct {
	Applies bool    `json:"applies"`
	SD      float64 `json:"sd"`
	Passing float64 `json:"passing"`
	// RunHours is the length of a run that is passed with the wanted power; 0 where no length is.
	RunHours float64 `json:"run_h"`
}

// RunLength is the length of a run that a line of one true efficiency passes with the wanted probability.
type RunLength struct {
	Power float64 `json:"power"`
	// True and Factor say of which line; Asked is false where no line above the agreed efficiency was looked at.
	Asked   bool           `json:"asked"`
	Entered bool           `json:"as_entered"`
	True    Estimate       `json:"true_efficiency"`
	Factor  float64        `json:"stop_rate_factor"`
	Lengths []LengthPasses `json:"lengths"`
	// Hours is the shortest length from which on the share of passed runs is at least the power, Low and High the same for
	// the upper and the lower ends of its intervals. 0 means longer than all that were simulated.
	Hours float64 `json:"hours"`
	Low   float64 `json:"low_hours"`
	High  float64 `json:"high_hours"`
	// FormulaHours is what the formula says; 0 where it does not apply.
	FormulaHours float64 `json:"formula_hours"`
}

// LengthPasses is the share of passed runs of one length.
type LengthPasses struct {
	Hours   float64  `json:"hours"`
	Passing Estimate `json:"passing"`
}

// Formula is what the asymptotic renewal formula takes from the line as entered: the stops of the station that limits it.
type Formula struct {
	Station     string  `json:"station,omitempty"`
	UpMinutes   float64 `json:"up_min"`
	DownMinutes float64 `json:"down_min"`
	UpCV        float64 `json:"up_cv"`
	DownCV      float64 `json:"down_cv"`
}
