package scenario

import (
	"reflect"
	"slices"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
	"tuckline/sim"
)

// clockTime is a time of the day, from midnight.
type clockTime struct {
	at
	time sim.Micros
	// ok says that it was written and read.
	ok bool
}

func (c *clockTime) read(r *reader, n *tree.Node, _ string, _ reflect.StructTag) {
	text, ok := r.scalar(c.at, n)
	if !ok {
		return
	}
	var err error
	if c.time, err = parseClock(text); err != nil {
		r.complain(c.at, "%v", err)
	}
	c.ok = err == nil
}

func (w *weekClock) read(r *reader, n *tree.Node, _ string, _ reflect.StructTag) {
	text, ok := r.scalar(w.at, n)
	if !ok {
		return
	}
	clock, err := parseWeekClock(text)
	if err != nil {
		r.complain(w.at, "%v", err)
	}
	w.week, w.time = clock.week, clock.time
}

// daysWords are weekdays: Fri, Mon-Fri, or a list of these.
type daysWords struct {
	at
	// days are from 0, Monday, rising.
	days []int
}

func (d *daysWords) read(r *reader, n *tree.Node, path string, _ reflect.StructTag) {
	items := []*tree.Node{n}
	if n.Kind == tree.List {
		if items = n.Items; len(items) == 0 {
			r.complain(d.at, "the list is empty; write at least one day, such as [Mon, Wed]")
		}
	}
	for _, item := range items {
		where := at{item, path}
		text, ok := r.scalar(where, item)
		if !ok {
			continue
		}
		days, err := parseDays(text)
		if err != nil {
			r.complain(where, "%v", err)
		}
		for _, day := range days {
			if slices.Contains(d.days, day) {
				r.complain(where, "%s is named twice; one of them has to go", weekdays[day])
				continue
			}
			d.days = append(d.days, day)
		}
	}
	slices.Sort(d.days)
}

// parseDays reads Fri or Mon-Fri; Fri-Mon goes over the end of the week.
func parseDays(text string) ([]int, error) {
	from, to, several := strings.Cut(strings.ReplaceAll(text, "–", "-"), "-")
	first, err := parseDay(strings.TrimSpace(from))
	last := first
	if several && err == nil {
		last, err = parseDay(strings.TrimSpace(to))
	}
	if err != nil {
		return nil, err
	}
	days := []int{first}
	for day := first; day != last; {
		day = (day + 1) % len(weekdays)
		days = append(days, day)
	}
	return days, nil
}

// persons is a number of people: 1 person, 2 people, or bare.
type persons struct {
	at
	value int64
}

func (p *persons) read(r *reader, n *tree.Node, _ string, _ reflect.StructTag) {
	text, ok := r.scalar(p.at, n)
	if !ok {
		return
	}
	count, err := quantity.ParseCount(text)
	switch {
	case err != nil:
		r.complain(p.at, "%v", err)
	case !slices.Contains([]string{"", "person", "people"}, count.Unit):
		r.complain(p.at, "%q is no number of people; write 1 person, or 2 people", text)
	case count.N < 1 || count.N > mostPeople:
		r.complain(p.at, "%q is out of range; it must be from 1 to %d people", text, mostPeople)
	default:
		p.value = count.N
	}
}

const mostPeople = 1000

// standsInBreaks is the word for breaks without relief.
const standsInBreaks = "line stands"

// read takes the bare words line stands too.
func (w *duringWords) read(r *reader, n *tree.Node, path string, _ reflect.StructTag) {
	switch {
	case n.Kind == tree.Map:
		r.decodeStruct(n, reflect.ValueOf(w).Elem(), path)
	case n.Kind == tree.Scalar && n.Text == standsInBreaks:
	default:
		r.complain(w.at, "this is not known here; write %s, or {relief: 1 person}", standsInBreaks)
	}
}

// shiftPeople is how many people of a crew are on a shift.
type shiftPeople struct{ whole }

// read passes over names that are no shift: what was meant is said where all names are known.
func (p *shiftPeople) read(r *reader, n *tree.Node, path string, _ reflect.StructTag) {
	if slices.Contains(r.shiftNames(), path[strings.LastIndexByte(path, '.')+1:]) {
		p.whole.read(r, n, path, `most:"1000"`)
	}
}

// shiftNames are the names of the shifts as written, before anything is read.
func (r *reader) shiftNames() []string {
	calendar, _ := r.root.Get("calendar")
	shifts, _ := calendar.Get("shifts")
	names := keysOf(shifts)
	if _, has := calendar.Get("overtime"); has {
		names = append(names, overtimeName)
	}
	return names
}

// overtimeName is that of the shift which overtime makes.
const overtimeName = "overtime"

// crewWordNames are the words of a crew.
func crewWordNames() []string { return wordsOf(reflect.TypeFor[crewWords]()).names() }
