package trade

import "math"

// SapPerSyrup is how many volumes of sap make one volume of syrup when no sugar
// is lost, both measured at 20 °C (68 °F).
//
// Source: sugar in is sugar out, S = (d_syrup × B_syrup) / (d_sap × B_sap), with
// [Density]. It stands in for the rule of 86 (C. H. Jones, University of Vermont,
// 1946) and its revision (Perkins and Isselhardt, Proctor Maple Research Center,
// 2013), which it meets within 1 % for sap of 1 to 4 °Bx, and it holds for
// concentrate too, where those rules fail.
//
// Valid: sapBrix above 0 to 85 °Bx, syrupBrix 0 to 85 °Bx.
func SapPerSyrup(sapBrix, syrupBrix float64) float64 {
	if sapBrix == 0 {
		return math.NaN()
	}
	return sugarIn(syrupBrix) / sugarIn(sapBrix)
}

// SyrupFrom is the volume of syrup that a volume of sap makes when no sugar is
// lost, in whatever unit the sap is measured in, both at 20 °C (68 °F). The same
// gives what the sweet left in the pans would have made. A difference of two
// volumes may be given, so the sap may be below 0.
//
// Source: the sugar balance of [SapPerSyrup].
//
// Valid: sapBrix 0 to 85 °Bx, syrupBrix above 0 to 85 °Bx.
func SyrupFrom(sap, sapBrix, syrupBrix float64) float64 {
	return Concentrate(sap, sapBrix, syrupBrix)
}

// Concentrate is the volume left of sap when water is taken out of it, by
// membrane, frost or fire, until its sugar has risen from one Brix to another, in
// the unit the sap is measured in, both at 20 °C (68 °F). When toBrix is the lower
// of the two, water is put in: that is how heavy syrup is thinned.
//
// Source: the sugar balance of [SapPerSyrup]; no sugar passes with the water.
//
// Valid: fromBrix 0 to 85 °Bx, toBrix above 0 to 85 °Bx.
func Concentrate(sap, fromBrix, toBrix float64) float64 {
	if toBrix == 0 {
		return math.NaN()
	}
	return sap * sugarIn(fromBrix) / sugarIn(toBrix)
}

// sugarIn is the sugar in a cubic metre at 20 °C, kg, NaN outside the density
// equation's range.
func sugarIn(brix float64) float64 {
	if !within(brix, 0, sweetest) {
		return math.NaN()
	}
	w := brix / 100
	return w * density20(w)
}
