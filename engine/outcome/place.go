package outcome

import "slices"

// place reorders x so that at each of the ranks stands the number that sorting
// would put there. ranks must rise (equal ones are allowed) and lie inside x,
// which must hold no NaN. This is C. A. R. Hoare's "Find" (Communications of
// the ACM 4:321-322, 1961) for several ranks at once, the pivot being guessed
// from a sample as R. W. Floyd and R. L. Rivest proposed (18:165-172, 1975).
func place(x []float64, ranks []int) {
	// Random numbers are done in far fewer rounds; sorting bounds what others
	// can cost.
	placeFrom(x, 0, ranks, 60)
}

// placeFrom places those ranks that fall into x, which starts at rank base.
func placeFrom(x []float64, base int, ranks []int, rounds int) {
	for len(ranks) > 0 {
		if len(x) <= 32 || rounds == 0 {
			slices.Sort(x)
			return
		}
		rounds--
		pivot := guess(x, ranks[len(ranks)/2]-base)
		cut := split(x, pivot)
		if cut == 0 {
			// The pivot is the least: all that equal it are in place together, which
			// is what makes a column of few different numbers quick.
			cut = splitEqual(x, pivot)
			ranks = ranks[below(ranks, base+cut):]
			x, base = x[cut:], base+cut
			continue
		}
		k := below(ranks, base+cut)
		placeFrom(x[:cut], base, ranks[:k], rounds)
		x, base, ranks = x[cut:], base+cut, ranks[k:]
	}
}

// guess is a number of x that should come out near the rank, from a sample.
func guess(x []float64, rank int) float64 {
	var sample [25]float64
	step := len(x) / len(sample)
	for i := range sample {
		sample[i] = x[step/2+i*step]
	}
	slices.Sort(sample[:])
	return sample[rank*len(sample)/len(x)]
}

// split moves what is less than pivot to the front and counts it. Every number
// is moved whether it is less or not: a processor cannot foresee which it will
// be, and the move costs less than a wrong expectation.
func split(x []float64, pivot float64) int {
	cut := 0
	for i, v := range x {
		x[i] = x[cut]
		x[cut] = v
		if v < pivot {
			cut++
		}
	}
	return cut
}

// splitEqual is split for what is no more than pivot.
func splitEqual(x []float64, pivot float64) int {
	cut := 0
	for i, v := range x {
		x[i] = x[cut]
		x[cut] = v
		if v <= pivot {
			cut++
		}
	}
	return cut
}

// below counts the ranks less than limit.
func below(ranks []int, limit int) int {
	k, _ := slices.BinarySearch(ranks, limit)
	return k
}
