package result

// Orders are what became of the orders of a scenario. A run in which an order was not finished is counted, and in no average; times are
// quantiles over all runs, what is not finished being later.
type Orders struct {
	// Until says that runs were to end with the orders; Unfinished is in how many of the runs not all of them were finished.
	Until      bool `json:"until_finished"`
	Unfinished int  `json:"unfinished"`
	// Finish is the time at which the last order was finished; only of orders that end.
	Finish *Clocked `json:"finish,omitempty"`
	// Each are in the order of the list and, of orders without end, the rounds.
	Each []OrderMade `json:"each"`
	// Left is what was left at the ends of orders, per scheduled hour.
	Left []Left `json:"left,omitempty"`
}

// OrderMade is one order.
type OrderMade struct {
	Name  string `json:"name"`
	Round int    `json:"round"`
	// Began and Ended are in how many runs it was begun and finished.
	Began int `json:"began"`
	Ended int `json:"finished"`
	// Begins is when its input was let in, Finishes when it was finished, Changeover the hours from the beginning of the changeover
	// before it to its own.
	Begins     Clocked  `json:"begins"`
	Finishes   Clocked  `json:"finishes"`
	Changeover Estimate `json:"changeover_h"`
	// Input is units of the batch, Good good pieces of the answer, of the runs in which it was finished.
	Input Estimate `json:"input"`
	Good  Estimate `json:"good"`
	Due   string   `json:"due,omitempty"`
	// InTime is the share of all runs in which it was finished when it was due; N is 0 without a date.
	InTime Estimate `json:"in_time,omitzero"`
}

// Clocked are times that 5, 50 and 95 % of all runs do not exceed.
type Clocked struct {
	P5  ClockTime `json:"p5"`
	P50 ClockTime `json:"p50"`
	P95 ClockTime `json:"p95"`
}

// ClockTime is a time after the start of the run in hours, and as a clock where there is a calendar. Within is false where it does
// not lie within the run.
type ClockTime struct {
	Within bool    `json:"within"`
	Hours  float64 `json:"h"`
	At     string  `json:"at,omitempty"`
}

// Left is what was left at the ends of orders: of a station the pieces of an input that was not complete, taken out ("rejected"), or
// the cycles with one ("closed"); of a place the pieces that were taken out by hand ("cleared").
type Left struct {
	Of      string   `json:"of"`
	What    string   `json:"what"`
	Unit    string   `json:"unit"`
	PerHour Estimate `json:"per_hour"`
}
