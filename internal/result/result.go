// Package result has the types of results.json and of part files. Names are
// stable: other programs read them.
package result

// Format is the version of results.json.
const Format = 1

// Estimate is a mean over replications with its confidence interval (low to
// high), the standard deviation of single replications and their number.
type Estimate struct {
	Mean float64 `json:"mean"`
	Low  float64 `json:"low"`
	High float64 `json:"high"`
	SD   float64 `json:"sd"`
	N    int     `json:"n"`
}

// Results is results.json. States, holding and down are shares of the scheduled time of the measured window, off shift,
// full and empty of all of its time; without a calendar that is the same.
type Results struct {
	Format       int    `json:"format"`
	Title        string `json:"title"`
	ScenarioHash string `json:"scenario_hash"`
	Seed         uint64 `json:"seed"`
	Replications int    `json:"replications"`
	// Unfinished are further replications, that were to end with their orders and did not: they are in no estimate.
	Unfinished    int       `json:"unfinished_replications,omitempty"`
	Confidence    float64   `json:"confidence"`
	MeasuredHours float64   `json:"measured_hours"`
	WarmUpHours   float64   `json:"warm_up_hours"`
	Engine        string    `json:"engine"`
	EngineReason  string    `json:"engine_reason"`
	Output        Output    `json:"output"`
	Stations      []Station `json:"stations"`
	Buffers       []Buffer  `json:"buffers"`
	Crews         []Crew    `json:"crews"`
	// LossTrees are of the station that limits the line, or of several side by side.
	LossTrees  []LossTree `json:"loss_trees"`
	KeyFigures KeyFigures `json:"key_figures"`
	// Orders are absent where the scenario has none.
	Orders   *Orders        `json:"orders,omitempty"`
	Measures []Measure      `json:"measures"`
	Warnings []string       `json:"warnings"`
	Ends     map[string]int `json:"ends"`
}

// Output is the answer: good pieces of the unit of the answer.
type Output struct {
	Unit    string   `json:"unit"`
	PerHour Estimate `json:"per_hour"`
	// Total is per shift or week of the calendar where the answer is, otherwise per window.
	Total Estimate `json:"total"`
	// ShiftP10, P50 and P90 are quantiles of the total of single windows or, as SpreadOf says, of the whole shifts in them. SpreadOf is
	// "shifts", "windows", or "none" where there are none to compare; empty without a calendar.
	ShiftP10 float64 `json:"shift_p10"`
	ShiftP50 float64 `json:"shift_p50"`
	ShiftP90 float64 `json:"shift_p90"`
	SpreadOf string  `json:"spread_of,omitempty"`
	// ByShift are the shifts of the calendar, overtime too, in its order, where whole ones of two or more names lie in the windows.
	ByShift []ShiftMade `json:"by_shift,omitempty"`
}

// ShiftMade is the good pieces of the answer of the whole shifts of one name: the mean of each run, estimated over those that have any.
type ShiftMade struct {
	Name string   `json:"name"`
	Good Estimate `json:"good"`
}

// Station has the figures of one station. What a station does not have, such as
// checks or materials, is absent.
type Station struct {
	Name            string   `json:"name"`
	CyclesPerHour   Estimate `json:"cycles_per_hour"`
	GivenPerHour    Estimate `json:"given_per_hour"`
	RejectedPerHour Estimate `json:"rejected_per_hour"`
	ScrappedPerHour Estimate `json:"scrapped_per_hour"`
	States          States   `json:"states"`
	Holding         Estimate `json:"holding"`
	Stops           []Stop   `json:"stops"`
	Pieces          Pieces   `json:"pieces_per_hour"`
	// EmptyPocketsPerHour are pockets that ran through empty; they are no cycles.
	EmptyPocketsPerHour Estimate   `json:"empty_pockets_per_hour,omitzero"`
	Materials           []Material `json:"materials,omitempty"`
	Checks              []Check    `json:"checks,omitempty"`
	// Origins say what began its blocked and starved spells, the longest first.
	Origins []Origin `json:"origins,omitempty"`
	// Waits are its requests for people, WaitsFor says for which crews it stands and waits, the longest first.
	Waits    *Waits     `json:"waits,omitempty"`
	WaitsFor []WaitsFor `json:"waits_for,omitempty"`
}

// States are the shares of the scheduled time in each state, which add up to 1; OffShift is a share of all time.
type States struct {
	Running    Estimate `json:"running"`
	Starved    Estimate `json:"starved"`
	Blocked    Estimate `json:"blocked"`
	Down       Estimate `json:"down"`
	Waiting    Estimate `json:"waiting"`
	Changeover Estimate `json:"changeover"`
	Planned    Estimate `json:"planned"`
	OffShift   Estimate `json:"off_shift"`
}

// Stop is one cause at one station.
type Stop struct {
	Name    string   `json:"name"`
	Class   string   `json:"class"`
	PerHour Estimate `json:"per_hour"`
	// Down is the share of the scheduled time, waiting for the crew included.
	Down Estimate `json:"down"`
}

// Buffer has the figures of one place between stations; Capacity is -1 without limit.
type Buffer struct {
	Name      string   `json:"name"`
	Capacity  int64    `json:"capacity"`
	Level     Estimate `json:"level"`
	Full      Estimate `json:"full"`
	Empty     Estimate `json:"empty"`
	InTransit Estimate `json:"in_transit"`
	// SensorStopsPerHour counts the reports of a full belt.
	SensorStopsPerHour Estimate `json:"sensor_stops_per_hour,omitzero"`
	// Beside is of stores beside the line and hand magazines, Stops of stores that have stops of their own.
	Beside *Beside `json:"beside,omitempty"`
	Stops  []Stop  `json:"stops,omitempty"`
}

// Measure is one measure asked for with --show, in the words of the list of measures.
type Measure struct {
	Name  string   `json:"name"`
	Of    string   `json:"of"`
	Per   string   `json:"per"`
	Value Estimate `json:"value"`
	// Unit is that of the value where the measure has one: "m", "min", "leaflets".
	Unit string `json:"unit,omitempty"`
}
