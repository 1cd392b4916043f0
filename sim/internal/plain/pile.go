package plain

import "tuckline/sim/internal/plan"

// A born is when pieces were born: by the oldest of their parts, and by the oldest of those that came through the
// main inputs; then, of each set of first stations that a check looks at, what it had given when the latter was born.
type born []int64

// Places in a born.
const (
	bornOldest = iota
	bornMain
	bornGiven
)

// pile is pieces in an order, as runs of pieces born together: their number, then their born.
type pile struct {
	stride int
	runs   []int64
	head   int
	pieces int64
}

func (p *pile) clear() { p.runs, p.head, p.pieces = p.runs[:0], 0, 0 }

// push puts pieces behind all others.
func (p *pile) push(b born, n int64) {
	p.pieces += n
	if last := len(p.runs) - p.stride; last >= p.head && same(p.runs[last+1:], b) {
		p.runs[last] += n
		return
	}
	if p.head > 64*p.stride && 2*p.head > len(p.runs) {
		p.runs = p.runs[:copy(p.runs, p.runs[p.head:])]
		p.head = 0
	}
	p.runs = append(append(p.runs, n), b...)
}

func same(a []int64, b born) bool {
	for i := range b {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// first takes up to n pieces that are born together from the front, or from the back; n must be at most what is there.
func (p *pile) first(n int64, last bool) (born, int64) {
	at := p.head
	if last {
		at = len(p.runs) - p.stride
	}
	b := born(p.runs[at+1 : at+p.stride])
	n = min(n, p.runs[at])
	p.pieces -= n
	if p.runs[at] -= n; p.runs[at] == 0 {
		if last {
			p.runs = p.runs[:at]
		} else {
			p.head += p.stride
		}
	}
	return b, n
}

// move takes n pieces to another pile, from the front or from the back.
func (p *pile) move(n int64, last bool, to *pile) {
	for n > 0 {
		b, some := p.first(n, last)
		to.push(b, some)
		n -= some
	}
}

// older is how many pieces were born before a time, by their main inputs.
func (p *pile) older(than plan.Micros) int64 {
	sum := int64(0)
	for at := p.head; at < len(p.runs); at += p.stride {
		if plan.Micros(p.runs[at+1+bornMain]) < than {
			sum += p.runs[at]
		}
	}
	return sum
}
