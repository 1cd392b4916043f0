package scenario

import (
	"slices"
	"strings"

	"tuckline/sim"
)

// usualPriority is that of a stop or task that names none; smaller goes first.
const usualPriority = 5

// reliefName is the crew that comes for breaks.
const reliefName = "relief"

// crews makes the crews of the line.
func (b *resolver) crews() {
	for i := range b.words.Crews.list {
		e := &b.words.Crews.list[i]
		w := &e.value
		crew := sim.Crew{
			Name: e.name, People: max(1, int(w.People.value)), ByShift: b.byShift(e),
			Walk: w.Walk.law.law, Response: w.Response.law.law, CanAlso: b.canAlso(e),
			ElsewhereShare: w.BusyElsewhere.Share.value, ElsewhereSpell: micros(w.BusyElsewhere.Spell.value),
		}
		b.law(w.Walk.law)
		b.law(w.Response.law)
		b.s.Line.Crews = append(b.s.Line.Crews, crew)
	}
	b.relief()
}

// crewNames are the names of the crews as written, but for one.
func (b *resolver) crewNames(but string) (names []string) {
	for _, e := range b.words.Crews.list {
		if e.name != but {
			names = append(names, e.name)
		}
	}
	return names
}

// byShift is how many people of a crew are on each shift; nil without a calendar.
func (b *resolver) byShift(e *entry[crewWords]) []int {
	b.checkOnShift(e)
	if b.s.Calendar == nil {
		return nil
	}
	numbers := make([]int, len(b.s.Calendar.Shifts))
	most := 0
	for i := range numbers {
		numbers[i] = int(e.value.People.value)
		for _, on := range e.value.OnShift.list {
			if on.name == b.s.Calendar.Shifts[i].Name {
				numbers[i] = int(on.value.value)
			}
		}
		most = max(most, numbers[i])
	}
	if most == 0 && !b.wrongIn(e.place.path) {
		b.complain(e.place, "nobody of %q is there on any shift; the work would never begin", e.name)
	}
	return numbers
}

// checkOnShift refuses numbers for what is no shift, with what was probably meant.
func (b *resolver) checkOnShift(e *entry[crewWords]) {
	shifts := b.shiftNames()
	for _, on := range e.value.OnShift.list {
		if slices.Contains(shifts, on.name) {
			continue
		}
		known := append(crewWordNames(), shifts...)
		near, found := Nearest(on.name, known)
		switch {
		case isLater("", on.name):
			b.later(on.place, on.name)
		case found:
			b.complain(on.place, "%q is neither a word of a crew nor a shift; did you mean %q?", on.name, near)
		case len(shifts) == 0:
			b.complain(on.place, "%q is not a word of a crew, and without a calendar there are no shifts; it knows %s", on.name, strings.Join(known, ", "))
		default:
			b.complain(on.place, "%q is neither a word of a crew nor a shift; the shifts are %s, the words %s", on.name, strings.Join(shifts, ", "), strings.Join(crewWordNames(), ", "))
		}
	}
}

// canAlso checks the crews whose work a crew can do.
func (b *resolver) canAlso(e *entry[crewWords]) (names []string) {
	for _, one := range e.value.CanAlso.list {
		switch others := b.crewNames(e.name); {
		case one.value == e.name:
			b.complain(one.at, "%q does its own work anyway; name other crews", e.name)
		case slices.Contains(names, one.value):
			b.complain(one.at, "%q is named twice; one of them has to go", one.value)
		case !slices.Contains(others, one.value):
			b.noSuchName(one.at, one.value, "other crew", others)
		default:
			names = append(names, one.value)
		}
	}
	return names
}

// relief makes the crew that comes for breaks.
func (b *resolver) relief() {
	people := &b.words.Calendar.During.Relief
	if people.value == 0 {
		return
	}
	if i := slices.IndexFunc(b.words.Crews.list, func(e entry[crewWords]) bool { return e.name == reliefName }); i >= 0 {
		b.complain(b.words.Crews.list[i].place, "%q is the name of those who come during breaks (%s); name this crew otherwise", reliefName, placeWords(people.at))
		return
	}
	b.s.Line.Crews = append(b.s.Line.Crews, sim.Crew{
		Name: reliefName, People: int(people.value), InBreaks: int(people.value), Relief: true, CanAlso: b.crewNames(""),
	})
}

// work resolves who is asked.
func (b *resolver) work(need *crewNeed, priority int) sim.Work {
	if priority == 0 {
		priority = usualPriority
	}
	if !need.given() || need.crew == "" {
		return sim.Work{Priority: priority}
	}
	names := b.crewNames("")
	if !slices.Contains(names, need.crew) {
		b.noSuchName(need.at, need.crew, "crew", names)
		return sim.Work{Priority: priority}
	}
	if there, known := b.mostThere(need.crew); need.people > there && known {
		b.complain(need.at, "%d of %s are asked for, but there are only %d; the work would never begin", need.people, need.crew, there)
	}
	return sim.Work{Crew: need.crew, People: need.people, Priority: priority}
}

// mostThere is how many people who can do the work of a crew are ever there at once. Of shifts that could not be read it
// is no less than that; known is false where crews could not be read that may be among them.
func (b *resolver) mostThere(name string) (most int, known bool) {
	shifts := 1
	if b.s.Calendar != nil {
		shifts = len(b.s.Calendar.Shifts)
	}
	for shift := range shifts {
		sum := 0
		for i := range b.words.Crews.list {
			e := &b.words.Crews.list[i]
			own := e.name == name
			switch crew := &b.s.Line.Crews[i]; {
			case (own || e.value.CanAlso.given()) && b.wrongIn(e.place.path):
				return 0, false
			case !own && !slices.Contains(crew.CanAlso, name):
			case crew.ByShift == nil:
				sum += max(crew.People, mostOnShift(&e.value))
			default:
				sum += crew.ByShift[shift]
			}
		}
		most = max(most, sum)
	}
	return most, true
}

// mostOnShift is the largest number that a crew has for a shift.
func mostOnShift(w *crewWords) (most int) {
	for _, on := range w.OnShift.list {
		most = max(most, int(on.value.value))
	}
	return most
}
