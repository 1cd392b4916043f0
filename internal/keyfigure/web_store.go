package keyfigure

import (
	"fmt"

	"tuckline/sim"
)

// WebStore has the figures of a store of web from which the machine draws while a splice is made.
type WebStore struct {
	// Length is in m.
	Length float64
	// Set and Fastest are at the set speed and at the fastest speed in use.
	Set, Fastest WebNeed
	// FullAgain is the minutes in which the empty store is full again at set speed: Length / ((refill - 1) × web
	// speed). Between is the minutes from one splice to the next.
	FullAgain, Between float64
}

// WebNeed is what a splice draws from the store at one speed: web speed × time of the splice.
type WebNeed struct {
	// Speed is in m/min, Mean and P999 are the metres for the mean and for 999 of 1,000 splices; Again999
	// is P999 with the splices that fail and are made again.
	Speed, Mean, P999, Again999 float64
	// Longer is the share of splices that last longer than the store, Stop how long the station then
	// stands on average, in minutes.
	Longer, Stop float64
}

// Enough says that the store lasts for 999 of 1,000 splices at the fastest speed in use.
func (w *WebStore) Enough() bool { return w.Fastest.Again999 <= w.Length*(1+1e-9) }

func newWebStore(m *sim.Material, s *Station, between float64) *WebStore {
	if !m.Store.On {
		return nil
	}
	w := &WebStore{Length: 1e-6 * float64(m.Store.Length), Between: between}
	splice := newRepeated(m.Lasts, m.SpliceFails)
	need := func(r Rate) WebNeed {
		speed := 1e-6 * float64(m.PerCycle) * r.Cycles
		n := WebNeed{Speed: speed, Mean: speed * m.Lasts.Mean() / minute, P999: speed * m.Lasts.Quantile(0.999) / minute}
		n.Again999 = speed * splice.quantile(0.999) / minute
		lasts := ratio(w.Length, speed) * minute
		n.Longer = splice.longer(lasts)
		n.Stop = ratio(splice.excess(lasts), n.Longer) / minute
		return n
	}
	w.Set, w.Fastest = need(s.Set), need(s.Fastest)
	w.FullAgain = ratio(w.Length, (m.Store.Refill-1)*w.Set.Speed)
	return w
}

func (w *WebStore) text() string {
	text := fmt.Sprintf("web store of %s m; a splice draws %s m on average at %s m/min, %s m in 999 of 1 000",
		number(w.Length), number(w.Set.Mean), number(w.Set.Speed), number(w.Set.P999))
	if w.Fastest.Speed > w.Set.Speed*(1+1e-6) {
		text += fmt.Sprintf(", at %s m/min %s and %s m", number(w.Fastest.Speed), number(w.Fastest.Mean), number(w.Fastest.P999))
	}
	if w.Set.Again999 > w.Set.P999*(1+1e-6) {
		text += fmt.Sprintf("; with splices that fail and are made again %s m in 999 of 1 000", number(w.Fastest.Again999))
	}
	return text + fmt.Sprintf("; full again in %s min, next splice after %s min", number(w.FullAgain), number(w.Between))
}

// warnings say that a store is too short, or not full again in time.
func (w *WebStore) warnings(material, station string) (all []string) {
	if !w.Enough() {
		n := &w.Fastest
		all = append(all, fmt.Sprintf("The web store of %s at %s, %s m, is too short for %s %% of the splices at %s m/min: then the station stops for %s min on average. %s m would do for 999 of 1 000.",
			material, station, number(w.Length), number(100*n.Longer), number(n.Speed), number(n.Stop), number(n.Again999)))
	}
	if w.FullAgain > w.Between {
		all = append(all, fmt.Sprintf("The web store of %s at %s takes %s min to fill again, but the next splice comes after %s min.",
			material, station, number(w.FullAgain), number(w.Between)))
	}
	return all
}

func (l *list) webStore(name string, w *WebStore) {
	l.add(name+": web store", w.Length, "m")
	for _, at := range []struct {
		words string
		need  *WebNeed
	}{{"at set speed", &w.Set}, {"at the highest speed in use", &w.Fastest}} {
		l.add(name+": a splice draws "+at.words, at.need.Mean, "m")
		l.add(name+": 999 of 1 000 splices draw "+at.words, at.need.P999, "m")
		if at.need.Again999 > at.need.P999*(1+1e-6) {
			l.add(name+": the same with splices made again "+at.words, at.need.Again999, "m")
		}
		l.share(name+": splices longer than the web store "+at.words, at.need.Longer)
		l.some(name+": then stops "+at.words, at.need.Stop, "min")
	}
	l.add(name+": web store full again", w.FullAgain, "min")
}
