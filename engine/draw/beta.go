package draw

import "math"

// beta is the beta distribution on 0 to 1 with two parameters above 0.
type beta struct {
	a, b float64
	// lnB is the logarithm of the complete beta function of a and b.
	lnB float64
}

func newBeta(a, b float64) beta {
	ga, _ := math.Lgamma(a)
	gb, _ := math.Lgamma(b)
	gab, _ := math.Lgamma(a + b)
	return beta{a, b, ga + gb - gab}
}

func (d beta) mirror() beta { return beta{d.b, d.a, d.lnB} }

// spread is the density of logit(x) where x has this distribution, which is
// x^a·(1-x)^b/B.
func (d beta) spread(x float64) float64 {
	return math.Exp(d.a*math.Log(x) + d.b*math.Log1p(-x) - d.lnB)
}

// cdf is the regularised incomplete beta function, by the continued fraction
// of the NIST Digital Library of Mathematical Functions, 8.17.22, on the side
// of the peak where it converges quickly.
func (d beta) cdf(x float64) float64 {
	if x > (d.a+1)/(d.a+d.b+2) {
		m := d.mirror()
		return 1 - m.spread(1-x)/m.a*m.fraction(1-x)
	}
	return d.spread(x) / d.a * d.fraction(x)
}

// fraction evaluates the continued fraction from the front (W. J. Lentz,
// Applied Optics 15:668-671, 1976).
func (d beta) fraction(x float64) float64 {
	a, b := d.a, d.b
	c, e := 1.0, 1/(1-(a+b)*x/(a+1))
	whole := e
	for m := 1.0; m < 300; m++ {
		even := m * (b - m) * x / ((a + 2*m - 1) * (a + 2*m))
		e = 1 / (1 + even*e)
		c = 1 + even/c
		whole *= c * e
		odd := -(a + m) * (a + b + m) * x / ((a + 2*m) * (a + 2*m + 1))
		e = 1 / (1 + odd*e)
		c = 1 + odd/c
		whole *= c * e
		if math.Abs(c*e-1) < 1e-16 {
			break
		}
	}
	return whole
}

// logit is the logit of the quantile of u, where u lies strictly between 0 and
// 1 and is given by its own logit t so that neither tail is rounded away.
func (d beta) logit(t float64) float64 {
	if t > 0 {
		return -d.mirror().logit(-t)
	}
	lnU := -math.Log1p(math.Exp(-t))
	// Near 0 the distribution is x^a/(a·B). From there on Newton's method runs
	// on ln cdf against logit x: a rising curve bent downwards, so that after one
	// step it never overshoots.
	y := min((lnU+math.Log(d.a)+d.lnB)/d.a, 0)
	for range 60 {
		x := 1 / (1 + math.Exp(-y))
		below := d.cdf(x)
		step := (math.Log(below) - lnU) * below / d.spread(x)
		y -= step
		if math.Abs(step) < 1e-14*max(1, math.Abs(y)) {
			break
		}
	}
	return y
}

// A betaTable answers quantiles of one beta distribution from stored pieces.
// The logit of the quantile is a smooth curve against the logit of u, almost
// straight at both ends; a polynomial of degree 5 through value, slope and bend
// at both ends of each piece follows it to better than 1e-10. Beyond the table
// (1 season in 10 million) the quantile is worked out afresh.
type betaTable struct {
	beta
	pieces [2 * tableEnd * perOne][6]float64
}

const (
	tableEnd = 16
	perOne   = 8
)

func tabulate(d beta) *betaTable {
	t := &betaTable{beta: d}
	const h = 1.0 / perOne
	v0, s0, b0 := d.knot(-tableEnd)
	for i := range t.pieces {
		v1, s1, b1 := d.knot(-tableEnd + float64(i+1)*h)
		// Hermite's coefficients on 0 to 1, from what the first three terms leave
		// to be made up at the far end.
		s, b := s0*h, b0*h*h/2
		value, slope, bend := v1-v0-s-b, s1*h-s-2*b, b1*h*h-2*b
		t.pieces[i] = [6]float64{v0, s, b,
			10*value - 4*slope + bend/2, -15*value + 7*slope - bend, 6*value - 3*slope + bend/2}
		v0, s0, b0 = v1, s1, b1
	}
	return t
}

// knot is the logit of the quantile at logit t with its first and second
// derivative. With p and x for what the logits t and y stand for, the slope is
// p(1-p)/spread(x), and ln of it changes by 1-2p-(a(1-x)-bx)·slope.
func (d beta) knot(t float64) (value, slope, bend float64) {
	value = d.logit(t)
	x, p := 1/(1+math.Exp(-value)), 1/(1+math.Exp(-t))
	slope = p * (1 - p) / d.spread(x)
	return value, slope, slope * (1 - 2*p - (d.a*(1-x)-d.b*x)*slope)
}

func (t *betaTable) quantile(u float64) float64 {
	l := math.Log(u / (1 - u))
	var y float64
	if at := (l + tableEnd) * perOne; at >= 0 && at < float64(len(t.pieces)) {
		i := int(at)
		c, f := &t.pieces[i], at-float64(i)
		y = c[0] + f*(c[1]+f*(c[2]+f*(c[3]+f*(c[4]+f*c[5]))))
	} else {
		y = t.logit(l)
	}
	return 1 / (1 + math.Exp(-y))
}
