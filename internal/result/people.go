package result

// Crew has the figures of one crew. Busy is the share of the time in which people are present that is work at the line, walking
// included; work after the end of the shift may take it beyond 1. Minutes is the same as minutes of people per scheduled hour, Waited the
// share of requests for which nobody was free.
type Crew struct {
	Name      string   `json:"name"`
	People    int      `json:"people"`
	Busy      Estimate `json:"busy"`
	Minutes   Estimate `json:"minutes_per_hour"`
	MeanWaitS Estimate `json:"mean_wait_s"`
	Waited    Estimate `json:"waited"`
	// Present is the mean number of people present in scheduled time, breaks left out.
	Present Estimate `json:"present"`
	// WalkingMinutes are of Minutes those from the call to the beginning of work, OvertimeMinutes those after the end of the shift or
	// in a break, both per scheduled hour; absent where there are none.
	WalkingMinutes  Estimate `json:"walking_minutes_per_hour,omitzero"`
	OvertimeMinutes Estimate `json:"overtime_minutes_per_hour,omitzero"`
	// Waits are the times from a request to the beginning of work.
	Waits *Waits `json:"waits,omitempty"`
}

// Waits are times from a request for people to the beginning of their work, in seconds: of all requests of all replications, those
// with P50 and P95 not exceeded by half and by 95 % of them.
type Waits struct {
	PerHour Estimate `json:"requests_per_hour"`
	MeanS   Estimate `json:"mean_s"`
	P50S    Estimate `json:"p50_s"`
	P95S    Estimate `json:"p95_s"`
}

// WaitsFor is the part of the scheduled time in which a station waits for a crew because of its own stops.
type WaitsFor struct {
	Crew  string   `json:"crew"`
	Share Estimate `json:"share"`
}
