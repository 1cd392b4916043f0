package proof

import "math"

// chainLine is a serial line with exponential cycles, stops and repairs, blocking after the cycle.
type chainLine struct {
	rate, fail, repair []float64
	slots              []int64
	// calendar: stops come at any time, and a stopped empty machine takes its input.
	calendar bool
	// before: in cycles, machines wait for room before they work, with their next piece loaded.
	before bool
}

// phase is what a machine has: nothing, a piece in work, a finished piece.
type phase uint8

const (
	empty phase = iota
	work
	finished
)

// chainState is one state of the line; up to four machines.
type chainState struct {
	machine [4]phase
	down    [4]bool
	buffer  [3]int64
}

// settle moves pieces until nothing moves any more, from the last machine back to the first.
func (l *chainLine) settle(s chainState) chainState {
	n := len(l.rate)
	for moved := true; moved; {
		moved = false
		for i := n - 1; i >= 0; i-- {
			if s.machine[i] == finished {
				switch {
				case i == n-1:
					s.machine[i], moved = empty, true
				case s.buffer[i] == 0 && s.machine[i+1] == empty:
					s.machine[i], s.machine[i+1], moved = empty, work, true
				case s.buffer[i] < l.slots[i]:
					s.machine[i], moved = empty, true
					s.buffer[i]++
				}
			}
			if s.machine[i] == empty && i == 0 {
				s.machine[i], moved = work, true
			} else if s.machine[i] == empty && s.buffer[i-1] > 0 {
				s.machine[i], moved = work, true
				s.buffer[i-1]--
			}
		}
	}
	return s
}

// step is a way from one state to another, with its rate.
type step struct {
	to   int
	rate float64
	out  bool
}

// chain are the states that the line can reach, and the steps from each.
func (l *chainLine) chain() (states []chainState, steps [][]step) {
	index := map[chainState]int{}
	at := func(s chainState) int {
		if _, known := index[s]; !known {
			index[s] = len(states)
			states = append(states, s)
		}
		return index[s]
	}
	at(l.settle(chainState{}))
	for k := 0; k < len(states); k++ {
		var out []step
		for i := range l.rate {
			s := states[k]
			if s.down[i] {
				s.down[i] = false
				out = append(out, step{at(s), l.repair[i], false})
				continue
			}
			if s.machine[i] == work {
				s.machine[i] = finished
				out = append(out, step{at(l.settle(s)), l.rate[i], i == len(l.rate)-1})
				s = states[k]
			}
			if s.machine[i] == work || l.calendar {
				s.down[i] = true
				out = append(out, step{at(s), l.fail[i], false})
			}
		}
		steps = append(steps, out)
	}
	return states, steps
}

// throughput solves the balance of the chain by Gauss and Seidel.
func (l *chainLine) throughput() float64 {
	states, steps := l.chain()
	into, leave := make([][]step, len(states)), make([]float64, len(states))
	for from, all := range steps {
		for _, s := range all {
			into[s.to] = append(into[s.to], step{to: from, rate: s.rate})
			leave[from] += s.rate
		}
	}
	p := make([]float64, len(states))
	for i := range p {
		p[i] = 1 / float64(len(p))
	}
	for change := 1.0; change > 1e-13; {
		change = 0
		for i := range p {
			sum := 0.0
			for _, s := range into[i] {
				sum += p[s.to] * s.rate
			}
			change = max(change, math.Abs(sum/leave[i]-p[i]))
			p[i] = sum / leave[i]
		}
	}
	out, all := 0.0, 0.0
	for i, ways := range steps {
		all += p[i]
		for _, s := range ways {
			if s.out {
				out += p[i] * s.rate
			}
		}
	}
	return out / all
}
