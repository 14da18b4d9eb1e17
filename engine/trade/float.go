package trade

import "math"

// glassExpansion is how much a glass float grows by volume for each °C.
// Value from memory, for soda-lime glass.
const glassExpansion = 25e-6

// The density equation at 60 °F, where floats are marked, as one polynomial in
// the sugar's share, worked by the compiler.
const (
	marked  = (60.0 - 32) * 5 / 9
	t60     = (marked - 20) / 100
	water60 = (a0 + marked*(a1+marked*(a2+marked*(a3+marked*(a4+marked*a5))))) / (1 + aBelow*marked)
	m1      = c01 + t60*(c11+t60*(c21+t60*(c31+t60*c41)))
	m2      = c02 + t60*(c12+t60*(c22+t60*(c32+t60*c42)))
	m3      = c03 + t60*(c13+t60*(c23+t60*c33))
	m4      = c04 + t60*(c14+t60*c24)
	m5      = c05 + t60*c15
	m6      = c06
)

// Hydrometer is what a glass float marked for 60 °F reads, in °Bx, in syrup that
// holds brix of sugar and stands at that temperature in °F. Hot syrup is thinner,
// so the float sinks deeper and reads low: 66.9 °Bx reads about 59 at 211 °F.
//
// Source: a float sinks until it pushes aside its own weight, so the reading r
// solves density(r, 60 °F) = density(brix, t) × (1 + 25e-6 × (t − 60 °F in °C)),
// with [Density] and the float's own swelling.
//
// Valid: brix 0 to 85 °Bx, fahrenheit 32 to 212, and only where the float stays
// on its scale: hot sap would read below 0, cold thick syrup above 85.
func Hydrometer(brix, fahrenheit float64) float64 {
	celsius := toCelsius(fahrenheit)
	floats := Density(brix, celsius) * (1 + glassExpansion*(celsius-marked))
	w := brix / 100
	// The curve is so nearly straight that four steps of Newton's method from the
	// true sugar settle to the last digit anywhere in the range.
	for range 4 {
		density := water60 + w*(m1+w*(m2+w*(m3+w*(m4+w*(m5+w*m6)))))
		slope := m1 + w*(2*m2+w*(3*m3+w*(4*m4+w*(5*m5+w*6*m6))))
		w -= (density - floats) / slope
	}
	return onScale(w * 100)
}

// onScale keeps a reading that is off its scale by rounding alone, and is NaN for
// one that is truly off it.
func onScale(reading float64) float64 {
	const rounding = 1e-9
	if !within(reading, -rounding, sweetest+rounding) {
		return math.NaN()
	}
	return min(max(reading, 0), sweetest)
}
