package plain

import (
	"tuckline/sim/internal/part"
	"tuckline/sim/internal/plan"
)

// phase is where a station stands between two events.
type phase uint8

const (
	idle    phase = iota // empty, waits for input, room or the end of a stop
	loaded               // input taken while stopped or without room, work not begun
	working              // in a cycle, at work or interrupted
	holding              // a finished cycle whose good pieces have not left
)

// node is what moves pieces: a station, or a link that passes its pieces on.
type node struct {
	index   int
	station *station // nil for a link
	link    *link    // nil for a station
	outs    []out    // that it puts pieces into: none for a sink
	turn    int      // of several, the one whose turn it is
}

// out is a link that a node puts pieces into.
type out struct {
	link *link
	plan *plan.Out
}

// input is a link that a station takes from.
type input struct {
	link  *link
	takes int64
}

// station is the state of one station. What every cycle reads comes first.
type station struct {
	plan  *plan.Station
	phase phase
	state plan.State
	// simple says that it takes from one link, alone, waits for no level and follows none.
	simple bool
	// eager says that it is simple and starts, without a look at room, when its input is there.
	eager bool
	// alone says that nobody else puts into the next link and no level stops it.
	alone bool
	// waited says that it waited for room when a stop of it or of its group began.
	waited bool
	// startable says that the start level has been reached since it lacked input.
	startable bool
	// pocket says that it runs a pocket through empty.
	pocket      bool
	index, node int
	// own is the open stop that is not of the calendar: an index into spells; none is -1.
	own  int
	open int // open stops of its own, calendar stops included
	// in is the link that it takes from, nil for supply; also are the others of a station
	// that assembles. Next is the link that it puts into, nil for a sink or where it
	// chooses among several.
	in, next *link
	out      int64 // finished good pieces held
	// reserved places in the next link for the cycle under way.
	reserved int64
	rec      *plan.StationRecord
	// begun is when the work under way began, rested the end of the last work, fromNew before the first.
	begun, rested plan.Micros
	// since is when it began to wait for room, Never if it does not; released has a bit for
	// each way out whose restart levels have let it go.
	since    plan.Micros
	released uint64
	// lacked is when it began to lack input, Never if it does not.
	lacked   plan.Micros
	heldFrom plan.Micros
	by, stop int         // cause of the state
	entered  plan.Micros // when the state began
	emptied  plan.Micros // when it was first starved since it ran last, Never if it was not; only where packs are lost
	mark     plan.Micros // up to where its time is counted
	// supply is what the outside still has, -1 without limit.
	supply  int64
	machine part.Machine
	also    []input
	// start is the buffer whose start level it waits for, or nil.
	start *link
	// loadedAt is the level that its speed steps read when it took its input before its work could begin.
	loadedAt int64
	// inARow counts empty pockets since the last cycle.
	inARow int64
	// delays are its speed steps with a delay.
	delays []delay
	// returns are the hand magazines before it to which rejected cycles come back.
	returns []*link
	// ways are the streams of the ways to its work, by cause; nil where there are none.
	ways []ways
	// order is the line where there are orders, else nil. Head is set if it draws from them, flow if what the heads give comes to
	// it; answers says that good pieces are counted behind it.
	order   *orderLine
	head    *plan.Head
	flow    *plan.FlowStation
	answers bool
	// lastPart is what there was of its last input of an order when it was settled that it works with that, short what that cycle
	// lacks.
	lastPart, short int64
}

// fromNew stands for the end of work of a station that has not worked yet.
const fromNew plan.Micros = -1

// spell is one open stop.
type spell struct {
	station, cause int
	begin, work    plan.Micros // work is Never while it waits for the crew
	people         int
	mark           plan.Micros
	// from is the beginning, or when the last of several works for it was over.
	from plan.Micros
	open bool
}

// link is the state of one place between stations. What every put and take reads comes first.
type link struct {
	plan     *plan.Link
	level    int64 // pieces, in transit or arrived
	arrived  int64
	reserved int64
	mark     plan.Micros
	rec      *plan.BufferRecord
	// first is the first feeder by name, nil if that is a link.
	first *station
	index int
	// special says that several put into it or take from it, that it has rules, or that ages are followed: store, nil for most.
	special bool
	store   *store
	// delays are of the speed steps that read it.
	delays []*delay
	// moving are the batches in transit, a ring.
	moving ring
	timer  int // of the first arrival
	// stood is for how long the belt has stood; times of arrival are counted without.
	stood plan.Micros
	// turn is the feeder, by its place in the list, that goes next where they take turns.
	turn int
	// since is, for a link that passes pieces on, when its first piece began to wait.
	since plan.Micros
	class []uint8 // level -> class, where it is asked for
	// fed says that what the heads of a line with orders give comes there.
	fed bool
	// order is the line of the place where there are orders, else nil.
	order *orderLine
}

// batch is what arrives together, at a time from which what the belt has stood is taken off.
type batch struct {
	at     plan.Micros
	pieces int64
}

// ring is a queue of batches that grows when needed and never shrinks.
type ring struct {
	slots      []batch
	head, size int
}

func (r *ring) clear() { r.head, r.size = 0, 0 }

func (r *ring) push(b batch) {
	if r.size == len(r.slots) {
		r.grow()
	}
	r.slots[(r.head+r.size)&(len(r.slots)-1)] = b
	r.size++
}

func (r *ring) grow() {
	larger := make([]batch, max(16, 2*len(r.slots)))
	for i := range r.size {
		larger[i] = r.slots[(r.head+i)&(len(r.slots)-1)]
	}
	r.slots, r.head = larger, 0
}

func (r *ring) first() *batch { return &r.slots[r.head] }

func (r *ring) pop() batch {
	b := r.slots[r.head]
	r.head = (r.head + 1) & (len(r.slots) - 1)
	r.size--
	return b
}
