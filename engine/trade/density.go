package trade

import "math"

// Coefficients of the ICUMSA density equation for sucrose solutions, as printed
// by Llano (2005). The first digit is the power of (t − 20)/100, the second the
// power of the sugar's share by weight.
const (
	c01, c02, c03, c04, c05, c06 = 385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890
	c11, c12, c13, c14, c15      = -46.2720, -7.1720, 1.1597, 5.1126, 17.5254
	c21, c22, c23, c24           = 59.7712, 7.2491, 12.3630, -35.4791
	c31, c32, c33                = -47.2207, -21.6977, 27.6301
	c41, c42                     = 18.3184, 12.3081
)

// Coefficients of its water term, by power of the temperature in °C.
const (
	a0, a1, a2 = 999.83952, 16.952577, -7.9905127e-3
	a3, a4, a5 = -46.241757e-6, 105.84601e-9, -281.03006e-12
	aBelow     = 16.887236e-3
)

const (
	sweetest = 85  // °Bx, where the density equation ends
	hottest  = 100 // °C, likewise
)

// Weighing in air: air of 20 °C at sea level against brass weights, as in NBS
// Circular C440.
const (
	airDensity   = 1.2  // kg/m³
	brassDensity = 8400 // kg/m³
)

// Density is the true density in kg/m³, as weighed in vacuum, of water holding
// sucrose. A scale standing in air shows about 0.1 % less: see [WeightInAir].
//
// Source: the ICUMSA sucrose density equation as printed by Llano (2005): a
// polynomial in the sugar's share w and in (t − 20)/100 on top of the density of
// water.
//
// Valid: brix 0 to 85 °Bx, celsius 0 to 100.
func Density(brix, celsius float64) float64 {
	if !within(brix, 0, sweetest) || !within(celsius, 0, hottest) {
		return math.NaN()
	}
	w := brix / 100
	t := (celsius - 20) / 100
	return waterDensity(celsius) +
		w*(c01+t*(c11+t*(c21+t*(c31+t*c41)))+
			w*(c02+t*(c12+t*(c22+t*(c32+t*c42)))+
				w*(c03+t*(c13+t*(c23+t*c33))+
					w*(c04+t*(c14+t*c24)+
						w*(c05+t*c15+
							w*c06)))))
}

// WeightInAir is what a scale in air shows for a volume, in kg/m³: the true
// density less the lift of the air on the liquid, and more by its lift on the
// brass weights the scale was set with.
//
// Source: the buoyancy correction of NBS Circular C440 (1942), with air of
// 1.2 kg/m³ and weights of 8,400 kg/m³, over [Density].
//
// Valid: brix 0 to 85 °Bx, celsius 0 to 100.
func WeightInAir(brix, celsius float64) float64 {
	return (Density(brix, celsius) - airDensity) / (1 - airDensity/brassDensity)
}

// waterDensity is the density of water in kg/m³, celsius 0 to 100.
func waterDensity(celsius float64) float64 {
	return (a0 + celsius*(a1+celsius*(a2+celsius*(a3+celsius*(a4+celsius*a5))))) / (1 + aBelow*celsius)
}

// water20 is waterDensity(20), worked by the compiler because every sugar
// balance needs it.
const water20 = (a0 + 20*(a1+20*(a2+20*(a3+20*(a4+20*a5))))) / (1 + aBelow*20)

// density20 is Density at 20 °C, where all but the first row of coefficients
// drop out, for a share w of sugar that the caller has checked.
func density20(w float64) float64 {
	return water20 + w*(c01+w*(c02+w*(c03+w*(c04+w*(c05+w*c06)))))
}
