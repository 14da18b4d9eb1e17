package draw

// Pert is the beta distribution on low to high (the ends) with its peak at
// likely and a weight of 4 on it: the mean is (low+4·likely+high)/6 (D. G.
// Malcolm and others, "Application of a technique for research and development
// program evaluation", Operations Research 7:646-669, 1959). Its variance is
// (mean-low)·(high-mean)/7. likely may be one of the ends. Three equal numbers
// give Certain. The error is an *Unfit.
func Pert(low, likely, high float64) (Shape, error) {
	if u := inOrder(low, likely, high); u != nil {
		return nil, u
	}
	if sure(low, likely, high) {
		return Certain(low), nil
	}
	wide := high - low
	return pert{tabulate(newBeta(1+4*(likely-low)/wide, 1+4*(high-likely)/wide)), low, wide}, nil
}

type pert struct {
	beta      *betaTable
	low, wide float64
}

func (p pert) Quantile(u float64) float64 { return p.low + p.wide*p.beta.quantile(u) }
