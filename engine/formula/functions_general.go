package formula

import "math"

func generalFunctions() []*Function {
	x := Arg{Name: "x", Any: true, Summary: "any number"}
	like := Arg{Name: "y", SameAs: 1, Summary: "one of the same dimension"}
	list := Arg{Name: "column", Column: true, Summary: "a table's column"}
	return []*Function{
		{Name: "min", Family: General, ResultAs: 1, Fn: least, repeat: true, rule: extremeRule,
			Summary: "The smallest.", Example: "min(sap, store)", Args: []Arg{x, like}},
		{Name: "max", Family: General, ResultAs: 1, Fn: most, repeat: true, rule: extremeRule,
			Summary: "The largest.", Example: "max(0, sap - store)", Args: []Arg{x, like}},
		{Name: "abs", Family: General, ResultAs: 1, F1: math.Abs,
			Summary: "The number without its sign.", Example: "abs(x)", Args: []Arg{x}},
		{Name: "round", Family: General, ResultAs: 1, F1: math.Round,
			Summary: "To the nearest whole, in the number's own unit; halves go away from zero.", Example: "round(x)", Args: []Arg{x}},
		{Name: "floor", Family: General, ResultAs: 1, F1: math.Floor,
			Summary: "Down to a whole, in the number's own unit.", Example: "floor(x)", Args: []Arg{x}},
		{Name: "ceil", Family: General, ResultAs: 1, F1: math.Ceil,
			Summary: "Up to a whole, in the number's own unit.", Example: "ceil(jars / of(12, \"jar/box\"))", Args: []Arg{x}},
		{Name: "sqrt", Family: General, F1: math.Sqrt, rule: rootRule,
			Summary: "Square root; of an area, a length.", Example: "sqrt(pan_area)", Args: []Arg{x}},
		{Name: "exp", Family: General, Result: "1", F1: math.Exp,
			Summary: "e to the power of a bare number.", Example: "exp(x)", Args: []Arg{{Name: "x", Unit: "1", Summary: "a bare number"}}},
		{Name: "ln", Family: General, Result: "1", F1: math.Log,
			Summary: "Natural logarithm of a bare number above zero.", Example: "ln(x)", Args: []Arg{{Name: "x", Unit: "1", Summary: "a bare number"}}},
		{Name: "clamp", Family: General, ResultAs: 1, F3: clamp,
			Summary: "The number held between low and high.", Example: `clamp(x, of(0, "gal"), store)`,
			Args: []Arg{x, {Name: "low", SameAs: 1, Summary: "the least it may be"}, {Name: "high", SameAs: 1, Summary: "the most it may be"}}},
		{Name: "between", Family: General, Fn: between, rule: betweenRule,
			Summary: "Read from a straight line through points; nothing is read beyond the first and the last.",
			Example: "between(temp, keeping.temp, keeping.days)",
			Args:    []Arg{x, {Name: "xs", Column: true, Summary: "where the points stand, rising"}, {Name: "ys", Column: true, Summary: "how high they are"}}},
		{Name: "of", Family: General, rule: ofRule,
			Summary: "A constant with a unit.", Example: `of(1.5, "h")`,
			Args: []Arg{{Name: "x", Unit: "1", Summary: "a bare number"}, {Name: "unit", Summary: "the unit, in quotes"}}},
		{Name: "number", Family: General, rule: numberRule,
			Summary: "The bare number of a quantity in a unit.", Example: `number(x, "lb")`,
			Args: []Arg{x, {Name: "unit", Summary: "the unit to count in, in quotes"}}},
		{Name: "sum", Family: General, rule: totalRule(Sum),
			Summary: "All rows of a column added.", Example: "sum(jars.income)", Args: []Arg{list}},
		{Name: "mean", Family: General, rule: totalRule(Mean),
			Summary: "The mean of a column's rows.", Example: "mean(jars.price)", Args: []Arg{list}},
	}
}

func least(args []float64) float64 {
	out := args[0]
	for _, a := range args[1:] {
		out = math.Min(out, a)
	}
	return out
}

func most(args []float64) float64 {
	out := args[0]
	for _, a := range args[1:] {
		out = math.Max(out, a)
	}
	return out
}

func clamp(x, low, high float64) float64 { return math.Max(low, math.Min(x, high)) }

// between takes x, then as many xs as ys: NaN beyond the ends, or where the xs
// do not rise.
func between(args []float64) float64 {
	x, n := args[0], (len(args)-1)/2
	xs, ys := args[1:1+n], args[1+n:]
	for i := 0; i+1 < n; i++ {
		if !(xs[i] < xs[i+1]) {
			return math.NaN()
		}
	}
	for i := 0; i+1 < n; i++ {
		if x >= xs[i] && x <= xs[i+1] {
			return ys[i] + (ys[i+1]-ys[i])*(x-xs[i])/(xs[i+1]-xs[i])
		}
	}
	return math.NaN()
}
