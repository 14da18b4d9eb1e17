package units

import "math"

// Unit is what a number is counted in. It is an immutable value the size of a
// pointer; the zero Unit is One. Units are compared with Same, or by their Dim
// and Scale, never with ==, which does not compile: two units may be alike
// without being one.
type Unit struct {
	_ [0]func()
	p *parts
}

// parts is what a Unit stands for. It is never written to once a Unit has it.
type parts struct {
	terms []term // merged: no two of the same def or count, no exponent 0
	dim   Dim
	scale exact
	text  string
	head  int  // bytes of text taken by money that stands first with exponent 1
	scaly bool // a temperature on a scale
	yes   bool // yes/no
}

// term is one factor. A count has no def.
type term struct {
	def   *def
	count string // the count's folded name
	sign  string // how money is written
	exp   int
}

var (
	onePart   = &parts{scale: exactOne, text: "1"}
	yesNoPart = &parts{scale: exactOne, text: yesNoCounts, dim: Dim{counts: yesNoCounts}, yes: true}
)

// One is the unit of a bare number. Its text is "1".
func One() Unit { return Unit{p: onePart} }

// YesNo is the unit of what a condition comes to: 1 for yes and 0 for no. It is
// like no other unit. Its text is "yes/no".
func YesNo() Unit { return Unit{p: yesNoPart} }

func (u Unit) parts() *parts {
	if u.p == nil {
		return onePart
	}
	return u.p
}

// Dim is the unit's dimension.
func (u Unit) Dim() Dim { return u.parts().dim }

// Scale times a value in u is the value in base units: m, kg, s, K, °Bx, the
// sheet's money, one of each count. The zero of a temperature scale is not
// moved; Conversion does that.
func (u Unit) Scale() float64 { return u.parts().scale.float() }

// IsAbsolute says whether u is a temperature on a scale: °F, °C or K standing
// alone. F°, C° and K° are differences, and so is any temperature in a product.
func (u Unit) IsAbsolute() bool { return u.parts().scaly }

// IsPlain says whether u is a bare number of whatever scale: 1, %, gal/L.
func (u Unit) IsPlain() bool { return u.parts().dim.IsPlain() }

// IsYesNo says whether u is what a condition comes to.
func (u Unit) IsYesNo() bool { return u.parts().yes }

// Difference is the unit two temperatures on a scale differ by: F° for °F. Any
// other unit is its own.
func (u Unit) Difference() Unit {
	if !u.IsAbsolute() {
		return u
	}
	return build(u.parts().terms)
}

// Absolute is the scale a temperature difference belongs to: °F for F°. Any
// unit that is not one temperature alone is its own.
func (u Unit) Absolute() Unit {
	p := u.parts()
	if p.scaly || len(p.terms) != 1 || p.terms[0].exp != 1 || p.dim != (Dim{base: temperature}) {
		return u
	}
	out := *p
	out.scaly, out.text = true, p.terms[0].def.onScale
	return Unit{p: &out}
}

// Mul is the unit of a product. A temperature on a scale is taken for its
// difference and yes/no for a bare number.
func (u Unit) Mul(v Unit) Unit { return u.times(v, 1) }

// Div is the unit of a quotient, on the terms of Mul.
func (u Unit) Div(v Unit) Unit { return u.times(v, -1) }

func (u Unit) times(v Unit, sign int) Unit {
	a, b := u.parts(), v.parts()
	switch {
	case len(b.terms) == 0 && !a.scaly && !a.yes:
		return u
	case len(a.terms) == 0 && sign == 1 && !b.scaly && !b.yes:
		return v
	}
	terms := make([]term, 0, len(a.terms)+len(b.terms))
	terms = append(terms, a.terms...)
	for _, t := range b.terms {
		t.exp *= sign
		terms = merge(terms, t)
	}
	return build(terms)
}

// Pow is the unit of a whole power; Pow(0) is One.
func (u Unit) Pow(n int) Unit {
	if n == 1 && !u.IsAbsolute() && !u.IsYesNo() {
		return u
	}
	var terms []term
	for _, t := range u.parts().terms {
		// Two bounds, because the product of two large whole numbers could wrap.
		t.exp = bounded(t.exp * bounded(n))
		terms = merge(terms, t)
	}
	return build(terms)
}

// Root is the unit whose nth power is u, and false when it has none that can be
// written: the square root of ft² is ft, and an acre has no root. n is 1 or more.
func (u Unit) Root(n int) (Unit, bool) {
	if n < 1 {
		return One(), false
	}
	if n == 1 {
		return u, true
	}
	var terms []term
	for _, t := range u.parts().terms {
		if t.exp%n != 0 {
			return One(), false
		}
		t.exp /= n
		terms = append(terms, t)
	}
	return build(terms), !u.Dim().beyond
}

// merge puts a term among terms of which no two are of one kind.
func merge(terms []term, t term) []term {
	for i := range terms {
		if terms[i].def != t.def || terms[i].count != t.count {
			continue
		}
		terms[i].exp = bounded(terms[i].exp + t.exp)
		if terms[i].exp == 0 {
			return append(terms[:i], terms[i+1:]...)
		}
		return terms
	}
	if t.exp == 0 {
		return terms
	}
	return append(terms, t)
}

// build makes a unit of merged terms, which it keeps, with its canonical text.
func build(terms []term) Unit {
	if len(terms) == 0 {
		return One()
	}
	p := &parts{terms: terms}
	p.measure()
	p.text = canonical(terms)
	if t := lead(terms); t.isMoney() {
		p.head = len(t.text())
	}
	return Unit{p: p}
}

// measure works out dimension and scale from the terms.
func (p *parts) measure() {
	p.scale = exactOne
	var counts []count
	var sum [len(base{})]int
	for _, t := range p.terms {
		p.dim.beyond = p.dim.beyond || isBeyond(t.exp)
		if t.def == nil {
			counts = append(counts, count{t.count, t.exp})
			continue
		}
		for i, exp := range t.def.base {
			sum[i] += int(exp) * t.exp
		}
		if t.def.scale != exactOne {
			p.scale = p.scale.mul(t.def.scale.pow(t.exp))
		}
	}
	for i, exp := range sum {
		p.dim.beyond = p.dim.beyond || isBeyond(exp)
		p.dim.base[i] = int8(bounded(exp))
	}
	p.dim.counts = joinCounts(counts)
	if s := p.scale.float(); s == 0 || math.IsInf(s, 0) || math.IsNaN(s) {
		p.dim.beyond = true
	}
}
