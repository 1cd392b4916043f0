package part

import "math"

// register keeps what a camera has found until it reaches the place where it leaves, so
// many cycles later. It moves with every cycle, and stands still with the station.
type register struct {
	after, count int64
	found        []flagged // a ring, never more than after + 1
	head, size   int
}

// flagged is what is on the way: it leaves at the end of the cycle of this number.
type flagged struct {
	due, pieces int64
	// inRun says that they were found in a run of rejects.
	inRun bool
}

func (r *register) reset(after int64) {
	r.after, r.count, r.head, r.size = after, 0, 0, 0
	if after > 0 && int64(len(r.found)) != after+1 {
		r.found = make([]flagged, after+1)
	}
}

// quiet is the number of cycles in which nothing leaves.
func (r *register) quiet() int64 {
	if r.size == 0 {
		return math.MaxInt64
	}
	return r.found[r.head].due - r.count - 1
}

func (r *register) passed(n int64) { r.count += n }

// shift ends a cycle in which so many were found, in a run or not, and says how many leave and
// whether those were found in one.
func (r *register) shift(found int64, inRun bool) (leave int64, left bool) {
	if r.after == 0 {
		return found, inRun
	}
	r.count++
	if found > 0 {
		r.found[(r.head+r.size)%len(r.found)] = flagged{due: r.count + r.after, pieces: found, inRun: inRun}
		r.size++
	}
	if r.size > 0 && r.found[r.head].due == r.count {
		leave, left = r.found[r.head].pieces, r.found[r.head].inRun
		r.head = (r.head + 1) % len(r.found)
		r.size--
	}
	return leave, left
}
