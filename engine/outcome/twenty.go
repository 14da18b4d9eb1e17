package outcome

import "slices"

// dots is how many seasons stand for all: as many as a person counts at a glance.
const dots = 20

// Twenty are the 2.5th, 7.5th, … 97.5th percentile (of type 7, see Quantile) of
// the finite numbers of col, from the lowest: twenty seasons, each as likely as
// the others, that stand for all (M. Kay, T. Kola, J. R. Hullman and S. A.
// Munson, "When (ish) is My Bus?", CHI 2016, on why to draw them). It is nil when
// there is no finite number. It works in scratch as Summarise does.
func Twenty(col, scratch []float64) []float64 {
	kept := keepFinite(col, scratch)
	if len(kept) == 0 {
		return nil
	}
	var ranks [2 * dots]int
	for i := range dots {
		rank, _ := position(len(kept), dotShare(i))
		ranks[2*i], ranks[2*i+1] = rank, min(rank+1, len(kept)-1)
	}
	slices.Sort(ranks[:]) // of few numbers the ranks of neighbours cross
	place(kept, ranks[:])
	out := make([]float64, dots)
	for i := range out {
		out[i] = Quantile(kept, dotShare(i))
	}
	return out
}

func dotShare(i int) float64 { return (float64(i) + 0.5) / dots }
