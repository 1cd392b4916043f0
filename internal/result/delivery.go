package result

// Delivery is the results.json of a delivery study: when the orders are finished, how likely that is in time, and when to start.
type Delivery struct {
	Format       int     `json:"format"`
	Title        string  `json:"title"`
	ScenarioHash string  `json:"scenario_hash"`
	Seed         uint64  `json:"seed"`
	Confidence   float64 `json:"confidence"`
	Replications int     `json:"replications"`
	// Starts is the clock of the start; hours are counted from it, nights and weekends included. HorizonHours is how long a run was
	// simulated at most.
	Starts       string  `json:"starts"`
	HorizonHours float64 `json:"horizon_h"`
	// Orders are those that have to be finished in time: all of them where By overrides their own dates.
	Orders []DeliveryOrder `json:"orders"`
	By     string          `json:"by,omitempty"`
	// InTime is the share of runs in which all of Orders are, with Wilson's interval; N is 0 without a date.
	InTime Estimate `json:"in_time"`
	// Unfinished is the number of runs in which not all orders were finished within the horizon.
	Unfinished int `json:"unfinished"`
	// Finish are quantiles of the time at which the last order is finished.
	Finish []DeliveryFinish `json:"finish"`
	// Curve is the share of runs that are finished by a time, with Wilson's interval.
	Curve       []DeliveryPoint `json:"curve"`
	LatestStart *LatestStart    `json:"latest_start,omitempty"`
	Warnings    []string        `json:"warnings"`
}

// DeliveryOrder is one order with its date.
type DeliveryOrder struct {
	Name     string   `json:"name"`
	Due      string   `json:"due"`
	DueHours float64  `json:"due_h"`
	InTime   Estimate `json:"in_time"`
}

// DeliveryFinish is a quantile of the finish, with the interval between two of the runs. Where Within is false that share of runs is
// not finished within the horizon; HighWithin says so of the upper end.
type DeliveryFinish struct {
	P          float64 `json:"p"`
	Within     bool    `json:"within"`
	Hours      float64 `json:"h"`
	At         string  `json:"at"`
	LowHours   float64 `json:"low_h"`
	LowAt      string  `json:"low_at"`
	HighWithin bool    `json:"high_within"`
	HighHours  float64 `json:"high_h"`
	HighAt     string  `json:"high_at"`
}

// DeliveryPoint is a point of the curve.
type DeliveryPoint struct {
	Hours    float64  `json:"h"`
	At       string   `json:"at"`
	Finished Estimate `json:"finished"`
}

// LatestStart is the latest start that still gives the wanted chance, looked for in steps of scheduled time.
type LatestStart struct {
	Chance      float64 `json:"chance"`
	StepMinutes float64 `json:"step_min"`
	// Found is false where no start back to Earliest gives it.
	Found    bool   `json:"found"`
	Earliest string `json:"earliest"`
	At       string `json:"at,omitempty"`
	// ShiftHours is how much later than the start of the scenario it is, below 0 if earlier.
	ShiftHours float64 `json:"shift_h"`
	// InTime is the share of the runs that chose it, Confirmed that of as many others with that start; Later is a step later.
	InTime    Estimate `json:"in_time"`
	Confirmed Estimate `json:"confirmed"`
	LaterAt   string   `json:"later_at,omitempty"`
	Later     Estimate `json:"later"`
}
