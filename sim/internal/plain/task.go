package plain

import (
	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// task is one of the plan's tasks: work that a crew does while stations run. A stop that waits
// for it is tied to it: it is waiting until the work of the task begins, then down, and goes on
// when the task is over.
type task struct {
	plan *plan.Task
	open bool
	// work is when the work began, Never while it waits for its crew.
	work   plan.Micros
	people int
	// spell is the stop that is tied to it, or none.
	spell  int
	stream draw.Stream
	ways   ways
}

// ask opens a task and asks for its crew; it must not be open.
func (e *Engine) ask(id int) {
	t := &e.tasks[id]
	t.open, t.work, t.spell, t.people = true, plan.Never, none, 0
	e.openTasks++
	e.countTask(t)
	work := &t.plan.Work
	if work.Crew == plan.None {
		e.beginTask(id)
		return
	}
	t.people = work.People
	e.request(work, request{
		at: e.now, station: t.plan.Station, task: true, spell: id, people: work.People, priority: work.Priority,
	})
}

// beginTask draws how long the work of a task lasts, and waits for its end.
func (e *Engine) beginTask(id int) {
	t := &e.tasks[id]
	t.work = e.now
	e.cal.set(e.timers.tasks+id, e.now+e.taskLasts(t))
	if t.spell != none {
		e.spellWorks(t.spell)
	}
}

func (e *Engine) taskLasts(t *task) plan.Micros {
	if t.plan.Kind == plan.RefillTask {
		s := &e.stations[t.plan.Station]
		return s.machine.Lasts(len(s.plan.Stops) + t.plan.Item)
	}
	if t.plan.Kind == plan.CarryTask {
		return e.carry(t)
	}
	return plan.Micros(draw.Micros(&t.plan.Work.Lasts, &t.stream))
}

// taskDue ends a task: its people are freed, and what it was for is done.
func (e *Engine) taskDue(id int) {
	t := &e.tasks[id]
	e.cal.set(e.timers.tasks+id, plan.Never)
	if len(e.walks) > 0 && e.arrives(jobOf(true, id)) {
		return
	}
	t.open = false
	e.openTasks--
	if t.people > 0 {
		e.free(t.plan.Work.Crew, jobOf(true, id))
	}
	switch t.plan.Kind {
	case plan.RefillTask:
		e.refilled(t)
	case plan.PrepareTask:
		e.prepared(t)
	case plan.CheckTask:
		e.tested(t)
	case plan.StoreStopTask:
		e.storeGoesOn(t)
	case plan.CarryTask:
		e.carried(t)
	case plan.ReturnTask:
		e.returned(t)
	case plan.SetUpTask:
		e.changedOver(&e.making.lines[t.plan.Item])
	}
}

// tie lets an open stop wait for an open task.
func (e *Engine) tie(spell, id int) {
	t := &e.tasks[id]
	t.spell = spell
	if t.work != plan.Never {
		e.spellWorks(spell)
	}
}

// spellWorks says that the work for which a stop waits begins.
func (e *Engine) spellWorks(id int) {
	e.count(id)
	sp := &e.spells[id]
	sp.work = e.now
	e.touched.add(sp.station)
	e.touchGroup(sp.station)
}

// spellWaits says that a stop waits again, for the next work: what has been is told apart.
func (e *Engine) spellWaits(id int) {
	e.count(id)
	sp := &e.spells[id]
	if e.trace != nil {
		e.traceStop(sp)
	}
	sp.from, sp.work = e.now, plan.Never
	e.touched.add(sp.station)
	e.touchGroup(sp.station)
}

func (e *Engine) resetTasks(o Options) {
	e.openTasks = 0
	for id := range e.tasks {
		p := &e.plan.Tasks[id]
		e.tasks[id] = task{plan: p, spell: none}
		if p.Purpose != "" {
			e.tasks[id].stream = draw.NewStream(o.Seed, o.Replication, p.Streams, p.Purpose, p.Name)
		}
	}
}
