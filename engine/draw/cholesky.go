package draw

import "math"

// cholesky is the lower triangle whose product with its own transpose is a
// correlation matrix. A column that follows from those before it gets zeros on
// and below the diagonal. ok is false when no such triangle exists. Only the
// lower half of the matrix is read.
func cholesky(matrix [][]float64) (factor [][]float64, ok bool) {
	const nothing = 1e-10
	factor = make([][]float64, len(matrix))
	for i, row := range matrix {
		factor[i] = make([]float64, len(matrix))
		for j := range i + 1 {
			left := row[j] - dot(factor[i][:j], factor[j][:j])
			switch {
			case i == j && left < -1e-6:
				return nil, false
			case i == j && left > nothing:
				factor[i][i] = math.Sqrt(left)
			case i != j && factor[j][j] > 0:
				factor[i][j] = left / factor[j][j]
			case i != j && math.Abs(left) > 1e-6:
				return nil, false
			}
		}
	}
	return factor, true
}

// forward solves factor·x = y. A column of zeros has no part in x.
func forward(factor [][]float64, y []float64) []float64 {
	x := make([]float64, len(y))
	for i, row := range factor {
		if row[i] > 0 {
			x[i] = (y[i] - dot(row[:i], x[:i])) / row[i]
		}
	}
	return x
}

// backward solves factor-transposed·x = y in the same way.
func backward(factor [][]float64, y []float64) []float64 {
	x := make([]float64, len(y))
	for i := len(y) - 1; i >= 0; i-- {
		left := y[i]
		for k := i + 1; k < len(y); k++ {
			left -= factor[k][i] * x[k]
		}
		if factor[i][i] > 0 {
			x[i] = left / factor[i][i]
		}
	}
	return x
}

// products holds the dot product of every two columns.
func products(columns [][]float64) [][]float64 {
	out := make([][]float64, len(columns))
	for j, a := range columns {
		out[j] = make([]float64, len(columns))
		for k, b := range columns[:j+1] {
			out[j][k] = dot(a, b)
			out[k][j] = out[j][k]
		}
	}
	return out
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, x := range a {
		sum += x * b[i]
	}
	return sum
}
