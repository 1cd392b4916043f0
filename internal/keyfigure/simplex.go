package keyfigure

import "math"

// negligible is what counts as nothing in equations whose largest coefficient is 1.
const negligible = 1e-10

// tableau is a linear programme in the form that the simplex method works on: equations
// solved for the unknowns of the basis, and what each other unknown would add to the goal. The solver
// of the library can go round in circles where several unknowns are zero at a time, as
// they are in lines with equal branches; Bland's rule (Bland, Mathematics of Operations
// Research 2 (1977); from memory) always ends.
type tableau struct {
	rows  [][]float64 // the last column is the right-hand side
	goal  []float64   // what one more of an unknown adds; the last entry is minus the goal so far
	basis []int
}

// most is the largest goal·x with rows·x = limits, x ≥ 0, every limit ≥ 0. The rows say something of
// their own each; ready is the unknown, by row, that alone solves it, or -1 where the limit is 0.
func most(goal []float64, rows [][]float64, limits []float64, ready []int) float64 {
	t := &tableau{goal: append(append([]float64{}, goal...), 0), basis: append([]int{}, ready...)}
	for i, row := range rows {
		scaled := append(append([]float64{}, row...), limits[i])
		scale(scaled, 1/largest(row))
		t.rows = append(t.rows, scaled)
	}
	for i, b := range t.basis {
		if b >= 0 {
			t.pivot(i, b)
		}
	}
	for i, b := range t.basis {
		if b < 0 {
			t.pivot(i, t.strongest(i)) // the limit is 0: whatever enters is 0 too
		}
	}
	for range 100 * len(t.goal) * (len(rows) + 1) {
		enters := t.enters()
		if enters < 0 {
			break
		}
		leaves := t.leaves(enters)
		if leaves < 0 {
			return math.Inf(1)
		}
		t.pivot(leaves, enters)
	}
	return -t.goal[len(t.goal)-1]
}

// pivot solves a row for an unknown and takes it out of all others.
func (t *tableau) pivot(row, unknown int) {
	scale(t.rows[row], 1/t.rows[row][unknown])
	for i := range t.rows {
		if i != row {
			subtract(t.rows[i], t.rows[row], unknown)
		}
	}
	subtract(t.goal, t.rows[row], unknown)
	t.basis[row] = unknown
}

// strongest is the unknown with the largest coefficient of a row.
func (t *tableau) strongest(row int) int {
	best := 0
	for j := range len(t.goal) - 1 {
		if math.Abs(t.rows[row][j]) > math.Abs(t.rows[row][best]) {
			best = j
		}
	}
	return best
}

// enters is the first unknown that adds to the goal, or -1.
func (t *tableau) enters() int {
	for j := range len(t.goal) - 1 {
		if t.goal[j] > negligible {
			return j
		}
	}
	return -1
}

// leaves is the row that bounds an unknown most, of equals the one whose unknown is first; -1 if none.
func (t *tableau) leaves(unknown int) int {
	best, least := -1, math.Inf(1)
	for i, row := range t.rows {
		if row[unknown] <= negligible {
			continue
		}
		bound := row[len(row)-1] / row[unknown]
		if bound < least || bound == least && t.basis[i] < t.basis[best] {
			best, least = i, bound
		}
	}
	return best
}

func scale(row []float64, by float64) {
	for j := range row {
		row[j] *= by
	}
}

// subtract takes an unknown out of a row by another that is solved for it.
func subtract(row, solved []float64, unknown int) {
	by := row[unknown]
	if by == 0 {
		return
	}
	for j := range row {
		row[j] -= by * solved[j]
		if math.Abs(row[j]) < negligible*1e-4 {
			row[j] = 0
		}
	}
	row[unknown] = 0
}

// largest is the largest coefficient of a row, 1 if there is none.
func largest(row []float64) float64 {
	most := 0.0
	for _, v := range row {
		most = max(most, math.Abs(v))
	}
	if most == 0 {
		return 1
	}
	return most
}
