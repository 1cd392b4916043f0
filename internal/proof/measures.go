package proof

import "tuckline/sim"

// rate is good pieces of these stations for every unit of time.
func (e *entry) rate(stations ...int) measure {
	return func(r *sim.Record) (part, whole float64) {
		for _, i := range stations {
			part += float64(r.Stations[i].Passed)
		}
		return part, float64(r.Window) / e.unit
	}
}

// share is the share of time in which a station is in one of the states.
func share(station int, states ...sim.State) measure {
	return func(r *sim.Record) (part, whole float64) {
		return inStates(r, station, states...), float64(r.Window)
	}
}

func inStates(r *sim.Record, station int, states ...sim.State) float64 {
	sum := sim.Micros(0)
	for _, s := range states {
		sum += r.Stations[station].States[s]
	}
	return float64(sum)
}

func in(states ...sim.State) func(int) measure {
	return func(station int) measure { return share(station, states...) }
}

// level is the mean number of pieces in a place.
func level(place int) measure {
	return func(r *sim.Record) (part, whole float64) {
		return float64(r.Buffers[place].LevelTime), float64(r.Window)
	}
}

// holding is the share of time in which a finished piece is held, down or not.
func holding(station int) measure {
	return func(r *sim.Record) (part, whole float64) {
		return float64(r.Stations[station].Holding), float64(r.Window)
	}
}

// allRunning is the share of time in which all stations run at once.
func allRunning(r *sim.Record) (part, whole float64) {
	return float64(r.AllRunning), float64(r.Window)
}

// sumOf adds measures of the same whole.
func sumOf(all ...measure) measure {
	return func(r *sim.Record) (part, whole float64) {
		for _, one := range all {
			p, w := one(r)
			part, whole = part+p, w
		}
		return part, whole
	}
}

// times multiplies a measure.
func times(k float64, one measure) measure {
	return func(r *sim.Record) (part, whole float64) {
		part, whole = one(r)
		return k * part, whole
	}
}

// count is the number of good pieces of a station, or its time of running, in the window.
func count(of func(*sim.Record) float64) measure {
	return func(r *sim.Record) (part, whole float64) { return of(r), 1 }
}
