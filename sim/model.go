package sim

import (
	"strings"

	"tuckline/sim/internal/plain"
	"tuckline/sim/internal/plan"
)

// Problem is one fault of a line: where it is and what would be right. The
// path has the names that lead to the value, joined by dots, as in
// "cartoner.stops.minor stop.every".
type Problem struct {
	Path, Text string
}

// Problems is all faults of a line.
type Problems []Problem

// Error lists all of them, a line each.
func (p Problems) Error() string {
	var b strings.Builder
	for i, one := range p {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(one.Path + ": " + one.Text)
	}
	return b.String()
}

// Model is a compiled line. It is read-only and may be shared by goroutines.
type Model struct {
	plan   plan.Plan
	places []Place
	line   Line
}

// Place is a place between stations, in the order of Record.Buffers: the
// buffers as declared, then the hand-overs that the program put.
type Place struct {
	Name string
	// Capacity is the number of places, or Unlimited.
	Capacity int64
	Transit  Micros
	Conveyor bool
	// Direct is, of the capacity of a store beside the line, the part of the way past it: places for what comes at
	// once beside a rest that is too small to take, at least as many as a hand-over has. AtStart and levels in per cent are of the others.
	Direct int64
	// HandOver says that nobody wrote it: the smallest place that cannot lock. Stacks says that it is larger,
	// 2 × takes − 1 places: the station behind it lets empty pockets run through, so that one stack is collected beside
	// one that waits.
	HandOver, Stacks bool
	// From and To name the neighbours that feed it and that take from it.
	From, To []string
}

// Options are what a replication is a function of, beside the model.
type Options struct {
	Seed        uint64
	Replication int
	// WarmUp is T0, Measure is the length of the window [T0, T0+Measure).
	WarmUp, Measure Micros
	// Trace, if not nil, collects changes of state, of level and stops.
	Trace *Trace
	// Classes asks for the time in each class of level.
	Classes bool
	// Attribute asks what began each blocked and starved spell (StationRecord.Because), and to
	// which stop the time under stops goes back (StationRecord.StoppedBy).
	Attribute bool
	// Pauses asks for the pauses one by one too (StationRecord.Pauses): many in a long window.
	Pauses bool
	// ShortUpTo asks for the standstills shorter than each of these lengths (StationRecord.Short); only with Attribute.
	ShortUpTo []Micros
	// AgesAt are the stations, by their place in the line, at whose output the age of pieces is noted
	// (Record.Ages), and with it the exposures of checks; nil means that ages are not followed.
	AgesAt []int
	// UntilOrders ends the run when all orders are finished, at T1 at the latest.
	UntilOrders bool
	// Waits asks for the distributions of waiting for crews.
	Waits bool
	// Every, if not 0, asks for what the stations pass in each interval of that length.
	Every Micros
}

// Places lists the places between stations in the order of Record.Buffers.
func (m *Model) Places() []Place { return m.places }

// StopNames lists the causes of a station, by its place in the line, in the order
// of StationRecord.Stops: its stops by name, those included that its rejects, picks and
// heat-up bring, then the materials by name.
func (m *Model) StopNames(station int) []string {
	s := &m.line.Stations[station]
	var names []string
	for _, cause := range stopCauses(s) {
		names = append(names, cause.name)
	}
	for _, i := range sortedStocks(s) {
		names = append(names, s.Materials[i].Name)
	}
	return names
}

// StopClasses lists their classes in the same order.
func (m *Model) StopClasses(station int) []Class {
	s := &m.line.Stations[station]
	var classes []Class
	for _, cause := range stopCauses(s) {
		classes = append(classes, cause.class)
	}
	for range sortedStocks(s) {
		classes = append(classes, MaterialChange)
	}
	return classes
}

// StopCrews lists the crews that are asked for them, in the same order; empty for what nobody is asked for. A change of reel
// may wait for the preparation of the next, which the crew of the material or another does: it counts as that of the material.
func (m *Model) StopCrews(station int) []string {
	s := &m.line.Stations[station]
	var crews []string
	for _, cause := range stopCauses(s) {
		crews = append(crews, cause.stop.Crew.Crew)
	}
	for _, i := range sortedStocks(s) {
		crews = append(crews, s.Materials[i].Crew.Crew)
	}
	return crews
}

// Engine runs replications of one model, one after the other. It keeps its
// memory between runs and belongs to one goroutine.
type Engine struct {
	plain *plain.Engine
}

// NewEngine makes an engine for the model.
func (m *Model) NewEngine() *Engine { return &Engine{plain: plain.New(&m.plan)} }

// Run runs one replication. The record depends on the model and the options only.
func (e *Engine) Run(o Options) Record {
	return e.plain.Run(plain.Options{
		Seed: o.Seed, Replication: o.Replication, WarmUp: o.WarmUp, Measure: o.Measure,
		Trace: o.Trace, Classes: o.Classes, Every: o.Every,
		Attribute: o.Attribute || o.Pauses, Pauses: o.Pauses, ShortUpTo: o.ShortUpTo, AgesAt: o.AgesAt, Waits: o.Waits,
		UntilOrders: o.UntilOrders,
	})
}
