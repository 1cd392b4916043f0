package result

// KeyFigures are the key figures of the line and of its stations, with how they were counted.
type KeyFigures struct {
	// Counting says how, in the words of the scenario format.
	Counting Counting `json:"counting"`
	// At names the stations that limit the line: the figures of the line are taken there. Line is empty where none does.
	At       []string         `json:"line_at"`
	Line     []KeyFigure      `json:"line"`
	Stations []StationFigures `json:"stations"`
	// Steps lead from one way of counting the OEE of the line to another.
	Steps []KeyFigureStep `json:"steps"`
}

// Counting are the choices in which key figures of one name differ.
type Counting struct {
	RunTimeFrom  string   `json:"planned_run_time_from"`
	MinorMinutes float64  `json:"minor_stop_shorter_than_min"`
	MinorAs      string   `json:"minor_stops_count_as"`
	MaterialAs   string   `json:"material_counts_as"`
	NotBusy      []string `json:"not_counted_as_planned_busy_time"`
	ReportedOEE  float64  `json:"reported_oee,omitempty"`
	HasReport    bool     `json:"as_reported"`
}

// KeyFigure is one figure: a share where it has no unit.
type KeyFigure struct {
	Key      string   `json:"key"`
	Name     string   `json:"name"`
	Standard string   `json:"standard"`
	Formula  string   `json:"formula"`
	Source   string   `json:"source"`
	Unit     string   `json:"unit,omitempty"`
	Value    Estimate `json:"value"`
}

// StationFigures are those of one station.
type StationFigures struct {
	Name    string      `json:"name"`
	Figures []KeyFigure `json:"figures"`
	// Stops are its causes, and under the name of all of them its own stops together.
	Stops []StopTimes `json:"stops"`
}

// AllStops is the name under which the stops of a station are put together; no cause has it.
const AllStops = "(all)"

// StopTimes are the mean times between and to repair of one cause, in minutes. N of what comes too seldom for an interval is
// below 2.
type StopTimes struct {
	Name  string `json:"name"`
	Class string `json:"class,omitempty"`
	// BetweenMinutes is running time between two of its stops, RepairMinutes the work, whenever it is done. StoppedMinutes is the time
	// under it, waiting for the crew included; with a calendar without breaks and the time between shifts, and once where stops overlap.
	BetweenMinutes Estimate `json:"between_min"`
	RepairMinutes  Estimate `json:"repair_min"`
	StoppedMinutes Estimate `json:"stopped_min"`
}

// StepData is the choice of the last step to another report: what no way of counting explains.
const StepData = "data"

// KeyFigureStep is one way of counting, and what it moves against the one before.
type KeyFigureStep struct {
	// Choice is what changes, To what it becomes; the first has neither.
	Choice string `json:"choice,omitempty"`
	To     string `json:"to,omitempty"`
	// Is says that this is how the scenario counts ("own") or the other report ("reported").
	Is string `json:"is,omitempty"`
	// Points is the OEE less that of the step before.
	Points       Estimate `json:"points"`
	OEE          Estimate `json:"oee"`
	Availability Estimate `json:"availability"`
	Performance  Estimate `json:"performance"`
	Quality      Estimate `json:"quality"`
}
