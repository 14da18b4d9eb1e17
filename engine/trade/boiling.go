package trade

import "math"

// How far the standard atmosphere and the saturation equation are taken, ft.
const (
	lowestFeet  = -1000
	highestFeet = 20000
)

// Boiling elevation of sugar solutions.
const (
	// sugarPerWater is the molar mass of water over that of sucrose.
	sugarPerWater = 18.015 / 342.30
	// riseScale is R T² / L for water boiling at 1 atm, in F°: 8.31446 J/(mol K),
	// 373.124 K and 40,655 J/mol.
	riseScale = 8.31446 * 373.124 * 373.124 / 40655 * 1.8
	// riseBend is the one free number of the curve, set so that the rise is
	// 7.1 F° at 66.0 °Bx.
	riseBend = 4.80222350860353
)

// WaterBoilsAt is the temperature in °F at which water boils at that height above
// the sea, in feet, on a standard day. The barometer of the day moves it by about
// 1.7 F° for each inch of mercury, so a thermometer in the day's own boiling
// water is always the better guide.
//
// Source: pressure by the US Standard Atmosphere 1976, temperature by the
// saturation equation of IAPWS-IF97, region 4.
//
// Valid: feet -1000 to 20000.
func WaterBoilsAt(feet float64) float64 {
	if !within(feet, lowestFeet, highestFeet) {
		return math.NaN()
	}
	return saturation(standardPressure(feet)*megapascalsPerInch)*1.8 - 459.67
}

// DrawOffAt is the temperature in °F at which syrup of that Brix boils at that
// height, in feet, on a standard day: [WaterBoilsAt] and a rise above it.
//
// Source: University of Maine for 7.1 F° at 66.0 °Bx. The curve through it is that
// of a solution whose water is held back by the sugar, R T²/L × (ln(1 + r) + k x²), where
// r is moles of sugar to one of water and x the sugar's share of all moles
// (Norrish's form, from memory). Its one free number k is set by the 7.1. It then
// gives 7.5 at 67 and 6.9 at 65.5, as the trade has it, and stays within 0.2 C° of
// what sugar handbooks give for sucrose from 10 to 70.
//
// The rise is not scaled with height: the published rule is 7.1 above whatever
// water does that day. The theory has it about 0.2 F° less at 5,000 ft, so syrup
// drawn there comes off half a °Bx heavy, never thin.
//
// Valid: syrupBrix 0 to 85 °Bx, feet -1000 to 20000.
func DrawOffAt(syrupBrix, feet float64) float64 {
	return WaterBoilsAt(feet) + boilingRise(syrupBrix)
}

// boilingRise is how far above water a sugar solution boils, F°.
func boilingRise(brix float64) float64 {
	if !within(brix, 0, sweetest) {
		return math.NaN()
	}
	r := sugarPerWater * brix / (100 - brix)
	x := r / (1 + r)
	return riseScale * (math.Log1p(r) + riseBend*x*x)
}

// megapascalsPerInch is one inch of mercury at 0 °C.
const megapascalsPerInch = 3386.389e-6

// standardPressure is the pressure of the US Standard Atmosphere 1976 below
// 36,000 ft, in inches of mercury.
func standardPressure(feet float64) float64 {
	return 29.9213 * math.Exp(5.2559*math.Log1p(-6.8756e-6*feet))
}

// Coefficients of IAPWS-IF97 region 4, table 34 of the 2007 release.
const (
	n1, n2, n3, n4, n5  = 0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7
	n6, n7, n8, n9, n10 = 0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3
)

// saturation is the temperature in K at which water boils under a pressure in
// MPa: equation 31 of IAPWS-IF97, from 0.000612 to 22.06 MPa.
func saturation(megapascals float64) float64 {
	b2 := math.Sqrt(megapascals)
	b := math.Sqrt(b2)
	e := b2 + n3*b + n6
	f := n1*b2 + n4*b + n7
	g := n2*b2 + n5*b + n8
	d := 2 * g / (-f - math.Sqrt(f*f-4*e*g))
	return (n10 + d - math.Sqrt((n10+d)*(n10+d)-4*(n9+n10*d))) / 2
}
