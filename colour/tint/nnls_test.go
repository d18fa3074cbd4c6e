package tint_test

import (
	"math/rand/v2"
	"testing"

	"example.com/lyewright/colour/tint"
)

// left is what a solution leaves over, squared.
func left(a [][]float64, b, x []float64) float64 {
	sum := 0.0
	for i := range a {
		r := b[i]
		for j, v := range x {
			r -= a[i][j] * v
		}
		sum += r * r
	}
	return sum
}

// leastOf solves for some unknowns alone, by normal equations; ok is false where they have
// no one answer.
func leastOf(a [][]float64, b []float64, set []int) (x []float64, ok bool) {
	n := len(set)
	m := make([][]float64, n)
	for r, j := range set {
		m[r] = make([]float64, n+1)
		for c, l := range set {
			for i := range a {
				m[r][c] += a[i][j] * a[i][l]
			}
		}
		for i := range a {
			m[r][n] += a[i][j] * b[i]
		}
	}
	for c := range n {
		if m[c][c] < 1e-12 {
			return nil, false
		}
		for r := range n {
			if r != c {
				f := m[r][c] / m[c][c]
				for l := range m[r] {
					m[r][l] -= f * m[c][l]
				}
			}
		}
	}
	x = make([]float64, len(a[0]))
	for r, j := range set {
		x[j] = m[r][n] / m[r][r]
	}
	return x, true
}

// Held against every choice of unknowns at zero: none of which leaves less.
func TestLeastSquaresWithoutNegativesIsTheLeast(t *testing.T) {
	source := rand.New(rand.NewPCG(9, 2026))
	atZero := 0
	for range 3000 {
		rows, unknowns := 3+source.IntN(6), 1+source.IntN(5)
		a, b := make([][]float64, rows), make([]float64, rows)
		for i := range a {
			a[i], b[i] = make([]float64, unknowns), source.NormFloat64()
			for j := range a[i] {
				a[i][j] = source.NormFloat64()
			}
		}
		got := tint.NonNegative(a, b)
		for _, v := range got {
			if v < 0 {
				t.Fatalf("%v", got)
			}
			if v == 0 {
				atZero++
			}
		}
		best := left(a, b, make([]float64, unknowns))
		for code := range 1 << unknowns {
			var set []int
			for j := range unknowns {
				if code>>j&1 == 1 {
					set = append(set, j)
				}
			}
			x, ok := leastOf(a, b, set)
			for _, v := range x {
				ok = ok && v >= 0
			}
			if ok {
				best = min(best, left(a, b, x))
			}
		}
		if l := left(a, b, got); l > best*(1+1e-9)+1e-12 {
			t.Fatalf("%v leaves %g, and %g could be left", got, l, best)
		}
	}
	if atZero < 1000 {
		t.Errorf("only %d unknowns at zero", atZero)
	}
}

// Of columns that are the same, or nothing, an answer is still given.
func TestLeastSquaresOfColumnsThatAreTheSame(t *testing.T) {
	a := [][]float64{{1, 1, 0}, {2, 2, 0}, {3, 3, 0}}
	x := tint.NonNegative(a, []float64{2, 4, 6})
	if l := left(a, []float64{2, 4, 6}, x); l > 1e-18 || x[2] != 0 {
		t.Errorf("%v leaves %g", x, l)
	}
}
