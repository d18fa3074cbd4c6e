package tint

import "math"

// A system is a set of linear equations in few unknowns, row by row, to be met as well as
// can be by unknowns that are not negative.
type system struct {
	rows, unknowns int
	a              []float64 // rows × unknowns
	b              []float64 // rows

	q, r   []float64 // room for the factors
	active []bool
	column []int
	x, try []float64
	// spanned are the unknowns whose columns the ones before them span: they got zero.
	spanned []int
}

func newSystem(rows, unknowns int) *system {
	return &system{
		rows: rows, unknowns: unknowns, a: make([]float64, rows*unknowns), b: make([]float64, rows),
		q: make([]float64, rows*unknowns), r: make([]float64, rows), active: make([]bool, unknowns),
		column: make([]int, 0, unknowns), x: make([]float64, unknowns), try: make([]float64, unknowns),
	}
}

// nonNegative solves by least squares under the condition that no unknown is negative:
// the active set method of Lawson and Hanson, Solving Least Squares Problems (1974),
// chapter 23 (recalled), begun with every unknown free, since that is mostly the answer.
// It gives up, with no solution, soon after ended reports true.
func (s *system) nonNegative(ended func() bool) []float64 {
	for j := range s.x {
		s.active[j], s.x[j] = true, 0
	}
	if s.least(); s.negative() < 0 {
		copy(s.x, s.try)
		return s.x
	}
	for j := range s.x {
		s.active[j] = false
	}
	// Every round frees one more and lowers what is left over, so that no set comes
	// twice; the bound is for a rounding that would.
	for range 3 * s.unknowns {
		next := s.steepest()
		if next < 0 || ended() {
			break
		}
		s.active[next] = true
		for s.least(); !ended(); s.least() {
			worst := s.negative()
			if worst < 0 {
				break
			}
			s.partWay()
		}
		copy(s.x, s.try)
	}
	return s.x
}

// negative gives an active unknown that the trial makes negative, or -1.
func (s *system) negative() int {
	for j, v := range s.try {
		if s.active[j] && v < 0 {
			return j
		}
	}
	return -1
}

// partWay goes from x towards the trial until the first unknown meets zero, and sets the
// unknowns that do aside.
func (s *system) partWay() {
	step := 1.0
	for j := range s.x {
		if s.active[j] && s.try[j] < 0 {
			step = min(step, s.x[j]/(s.x[j]-s.try[j]))
		}
	}
	for j := range s.x {
		if !s.active[j] {
			continue
		}
		reached := s.try[j] < 0 && s.x[j]/(s.x[j]-s.try[j]) <= step
		s.x[j] += step * (s.try[j] - s.x[j])
		if reached {
			s.active[j], s.x[j] = false, 0
		}
	}
}

// steepest gives the unknown at zero that would lower what is left over the fastest, or
// -1 where none would.
func (s *system) steepest() int {
	copy(s.r, s.b)
	for i := range s.rows {
		for j, v := range s.x {
			s.r[i] -= s.a[i*s.unknowns+j] * v
		}
	}
	best, most := -1, 0.0
	for j := range s.x {
		if s.active[j] {
			continue
		}
		slope, size := 0.0, 0.0
		for i := range s.rows {
			v := s.a[i*s.unknowns+j]
			slope += v * s.r[i]
			size += v * v
		}
		if size == 0 {
			continue
		}
		if slope /= math.Sqrt(size); slope > most+nothingLeft {
			best, most = j, slope
		}
	}
	return best
}

// nothingLeft is what counts as no slope: readings are known to far less.
const nothingLeft = 1e-12

// least solves by least squares for the active unknowns, into try: Householder's
// reflections on columns scaled to length 1. A column that the ones before it span to
// their rounding gets zero.
func (s *system) least() {
	s.column, s.spanned = s.column[:0], s.spanned[:0]
	for j := range s.try {
		if s.try[j] = 0; s.active[j] {
			s.column = append(s.column, j)
		}
	}
	n, rows := len(s.column), s.rows
	q := s.q[:n*rows] // column by column
	copy(s.r, s.b)
	var scale, diagonal [2*MostColourants + 2]float64
	for k, j := range s.column {
		col := q[k*rows : (k+1)*rows]
		size := 0.0
		for i := range rows {
			col[i] = s.a[i*s.unknowns+j]
			size += col[i] * col[i]
		}
		if scale[k] = math.Sqrt(size); scale[k] > 0 {
			for i := range col {
				col[i] /= scale[k]
			}
		}
	}
	rank := 0 // rows used up
	var row [2*MostColourants + 2]int
	for k := range n {
		row[k] = -1
		if rank == rows {
			s.spanned = append(s.spanned, s.column[k])
			continue
		}
		col := q[k*rows : (k+1)*rows]
		size := 0.0
		for _, v := range col[rank:] {
			size += v * v
		}
		if size = math.Sqrt(size); size < roundingOfOne {
			s.spanned = append(s.spanned, s.column[k])
			continue
		}
		if col[rank] > 0 {
			size = -size
		}
		diagonal[k] = size
		col[rank] -= size
		norm := 0.0
		for _, v := range col[rank:] {
			norm += v * v
		}
		reflect := func(other []float64) {
			dot := 0.0
			for i := rank; i < rows; i++ {
				dot += col[i] * other[i]
			}
			dot *= 2 / norm
			for i := rank; i < rows; i++ {
				other[i] -= dot * col[i]
			}
		}
		for l := k + 1; l < n; l++ {
			reflect(q[l*rows : (l+1)*rows])
		}
		reflect(s.r)
		row[k] = rank
		rank++
	}
	for k := n - 1; k >= 0; k-- {
		if row[k] < 0 {
			continue
		}
		v := s.r[row[k]]
		for l := k + 1; l < n; l++ {
			if row[l] >= 0 {
				v -= q[l*rows+row[k]] * s.try[s.column[l]] * scale[l]
			}
		}
		s.try[s.column[k]] = v / diagonal[k] / scale[k]
	}
}

// roundingOfOne is how much of a column of length 1 may be left where the ones before it
// span it but for their rounding.
const roundingOfOne = 1e-11

// dependent lists the unknowns whose columns the ones before them span.
func (s *system) dependent() []int {
	for j := range s.active {
		s.active[j] = true
	}
	s.least()
	return s.spanned
}
