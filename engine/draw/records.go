package draw

import (
	"math"
	"slices"
)

type records []float64

// Records is the shape of past values, each as likely as the others: the value
// of rank floor(u·n) of the n in order. It copies values. Values that are NaN
// or infinite are left out; without any value Quantile is NaN.
func Records(values []float64) Shape {
	kept := make(records, 0, len(values))
	for _, v := range values {
		if finite(v) {
			kept = append(kept, v)
		}
	}
	slices.Sort(kept)
	return kept
}

func (r records) Quantile(u float64) float64 {
	if len(r) == 0 || math.IsNaN(u) {
		return math.NaN()
	}
	rank := int(u * float64(len(r)))
	return r[min(max(rank, 0), len(r)-1)]
}

type certain float64

// Certain is the shape of a number known for sure: x in every season.
func Certain(x float64) Shape { return certain(x) }

func (c certain) Quantile(float64) float64 { return float64(c) }

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
