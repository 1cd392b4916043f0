package keyfigure

// handOvers derives the places that the program puts where no buffer is
// written: the smallest that cannot lock.
func handOvers(f *flow, stations []Station) []Place {
	var places []Place
	for to := range stations {
		for _, from := range f.before[to] {
			if from >= len(stations) {
				continue
			}
			a, b := &stations[from], &stations[to]
			p := Place{
				Name: a.Name + " to " + b.Name, Unit: a.GivesUnit, Kind: "hand-over",
				From: []string{a.Name}, To: []string{b.Name},
				Capacity: max(a.Gives, b.Takes) - 1,
				Feed:     a.Set.Pieces, Drain: b.Top.Cycles * float64(b.Takes),
			}
			p.fill()
			places = append(places, p)
		}
	}
	return places
}
