package report

import (
	"encoding/csv"
	"encoding/json"
	"io"
	"strconv"

	"tuckline/internal/study"
	"tuckline/sim"
)

// JSON writes the results of a study as results.json: stable names, indented.
func JSON(w io.Writer, results any) error {
	encoder := json.NewEncoder(w)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	return encoder.Encode(results)
}

// ReplicationsCSV writes one row a replication. Runs that were to end with their orders and did not, whose ending is another than
// "orders finished", have a row and are in no estimate. The columns are, in this order:
//
//	replication, ending, ended_at_h    its number, why and when it ended
//	window_s, scheduled_s              the window, and of it what is not off shift
//	good_output                        good pieces of the answer in the window
//	STATION cycles, scrapped_cycles    counts of cycles in the window
//	STATION given, rejected, scrapped  pieces, as in results.json
//	STATION in_runs, no_reads, lost_packs, mis_picked, samples, empty_pockets
//	STATION STATE_s                    seconds in each state, held_s with finished output held
//	STATION minor_stops, minor_stops_s standstills shorter than the limit of the key figures, without stops for material
//	STATION stops of CAUSE             how many began, then CAUSE_s: seconds, waiting included
//	STATION MATERIAL used, wasted      pieces, or used_um and wasted_um: micrometres of web
//	STATION MATERIAL tasks, late, lateness_s, failed_splices, failed_picks
//	STATION tests of CHECK             how many were over
//	BUFFER mean_level, max_level       pieces, over all of the window: nights and weekends within it too
//	BUFFER full_s, empty_s             seconds, likewise
//	BUFFER sensor_stops, kept, given_back, ran_dry_s, by_hand, carried_s, returned, stops of CAUSE, CAUSE_s
//	CREW requests, waited, busy_s, wait_s, present_s, walking_s, overtime_s
//	ORDER began_h, finished_h, input, good of the first round; empty where it did not come to that
//
// with a colon between a name and what follows it, as in "cartoner: given". What a
// station or a buffer does not have has no column.
func ReplicationsCSV(w io.Writer, o *study.Outcome) error {
	columns := csvColumns(o)
	rows := csv.NewWriter(w)
	line := make([]string, len(columns))
	for i, c := range columns {
		line[i] = c.head
	}
	// The writer keeps its first error for the end.
	_ = rows.Write(line)
	for r := range o.Records {
		for i, c := range columns {
			line[i] = c.of(&o.Records[r])
		}
		_ = rows.Write(line)
	}
	rows.Flush()
	return rows.Error()
}

// csvColumn is one column of replications.csv.
type csvColumn struct {
	head string
	of   func(*sim.Record) string
}

func csvColumns(o *study.Outcome) []csvColumn {
	good := study.GoodPieces(o.Scenario)
	columns := []csvColumn{
		{"replication", func(r *sim.Record) string { return strconv.Itoa(r.Replication) }},
		{"ending", func(r *sim.Record) string { return r.End.String() }},
		{"ended_at_h", func(r *sim.Record) string { return decimal(float64(r.EndedAt) / float64(sim.Hour)) }},
		{"window_s", func(r *sim.Record) string { return seconds(r.Window) }},
		{"scheduled_s", func(r *sim.Record) string { return seconds(r.Scheduled) }},
		{"good_output", func(r *sim.Record) string { return integer(good(r)) }},
	}
	for i := range o.Results.Stations {
		columns = append(columns, stationColumns(o, i)...)
	}
	for i := range o.Results.Buffers {
		columns = append(columns, bufferColumns(o, i)...)
	}
	for i, crew := range o.Results.Crews {
		columns = append(columns, crewColumns(i, crew.Name)...)
	}
	if o.Scenario.Orders != nil {
		for i, batch := range o.Scenario.Orders.Batches {
			columns = append(columns, orderColumns(i, batch.Name)...)
		}
	}
	return columns
}

func integer(n int64) string { return strconv.FormatInt(n, 10) }

// seconds keeps every microsecond.
func seconds(t sim.Micros) string { return decimal(float64(t) / float64(sim.Second)) }

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
