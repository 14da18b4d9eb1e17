package workbook

import "thawbook/engine/trade"

// Coefficients of the ICUMSA density equation for sucrose solutions, as printed
// by Llano (2005) and as package trade has them; a test holds the two together.
const (
	c01, c02, c03, c04, c05, c06 = 385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890
	c11, c12, c13, c14, c15      = -46.2720, -7.1720, 1.1597, 5.1126, 17.5254
	c21, c22, c23, c24           = 59.7712, 7.2491, 12.3630, -35.4791
	c31, c32, c33                = -47.2207, -21.6977, 27.6301
	c41, c42                     = 18.3184, 12.3081
)

const sweetest = 85 // °Bx, where the density equation ends

func syrupExpansions() map[string]expansion {
	return map[string]expansion{
		"density": density,
		"sap_per_syrup": func(s *speller, a []piece) piece {
			return formulaText(multiplying, s.sugarIn(a[1]), "/", s.sugarIn(a[0]))
		},
		"syrup_from":  concentrate,
		"concentrate": concentrate,
		"hydrometer":  hydrometer,
		"taps_in_tree": func(s *speller, a []piece) piece {
			d := s.atom("a trunk's diameter, in", a[0])
			return guarded(call("IF", piece{text: d.text + "<12"}, number(0),
				call("IF", piece{text: d.text + "<=18"}, number(1), number(2))), atLeast(d, 0))
		},
	}
}

// concentrate is sugar in is sugar out, at 20 °C.
func concentrate(s *speller, a []piece) piece {
	return formulaText(multiplying, a[0], "*", s.sugarIn(a[1]), "/", s.sugarIn(a[2]))
}

// sugarIn is the sugar in a hundred cubic metres at 20 °C, kg.
func (s *speller) sugarIn(brix piece) piece {
	if brix.fixed {
		return number(brix.value * trade.Density(brix.value, 20))
	}
	brix = s.atom("sugar, °Bx, in the working of "+s.label, brix)
	return formulaText(multiplying, brix, "*", s.density20(brix))
}

// density20 is the density at 20 °C in kg/m³, under a name that says of what.
func (s *speller) density20(brix piece) piece {
	if brix.fixed {
		return number(trade.Density(brix.value, 20))
	}
	brix = s.atom("sugar, °Bx, in the working of "+s.label, brix)
	w := formulaText(multiplying, brix, "/100")
	out := guarded(polynomial(w, trade.Density(0, 20), c01, c02, c03, c04, c05, c06), within(brix, 0, sweetest))
	return s.called([]string{"density_at", s.plainName(brix)}, false, "kg in a cubic metre at 68 °F when "+s.plainName(brix)+" is its sugar", out)
}

// plainName is a piece's name without the number of its plan, which a name made
// of it gets again.
func (s *speller) plainName(p piece) string {
	for i, name := range s.names.value {
		if name == p.text {
			line := s.names.plan.Slots[i].Line
			if line.Table == "" {
				return line.ID
			}
		}
	}
	return p.text
}

// density is the whole equation: the water's part and the sugar's, each
// coefficient a polynomial in the temperature.
func density(s *speller, a []piece) piece {
	brix := s.atom("sugar, °Bx, in the working of "+s.label, a[0])
	celsius := s.atom("temperature, °C, in the working of "+s.label, a[1])
	if celsius.fixed && celsius.value == 20 {
		return s.density20(brix)
	}
	w := formulaText(multiplying, brix, "/100")
	if brix.fixed {
		w = number(brix.value / 100)
	}
	var t, water piece
	if celsius.fixed {
		t, water = number((celsius.value-20)/100), number(trade.Density(0, celsius.value))
	} else {
		t = s.apart("how far the temperature lies from 20 °C, in hundreds", formulaText(multiplying, "(", celsius, "-20)/100"))
		water = s.apart("kg in a cubic metre of water at that temperature", waterDensity(celsius))
	}
	sugar := polynomial(w,
		polynomial(t, c01, c11, c21, c31, c41), polynomial(t, c02, c12, c22, c32, c42), polynomial(t, c03, c13, c23, c33),
		polynomial(t, c04, c14, c24), polynomial(t, c05, c15), c06)
	return s.apart("kg in a cubic metre at its sugar and temperature",
		guarded(formulaText(adding, water, "+", w, "*", sugar), within(brix, 0, sweetest), within(celsius, 0, 100)))
}

// waterDensity is the water term of the density equation, kg/m³.
func waterDensity(celsius piece) piece {
	above := polynomial(celsius, 999.83952, 16.952577, -7.9905127e-3, -46.241757e-6, 105.84601e-9, -281.03006e-12)
	return formulaText(multiplying, above, "/(1+", 16.887236e-3, "*", celsius, ")")
}

// hydrometer solves for the reading by four steps of Newton's method, each in a
// cell of its own, as package trade does.
func hydrometer(s *speller, a []piece) piece {
	const marked = (60.0 - 32) * 5 / 9
	const t = (marked - 20) / 100
	m := [...]float64{
		c01 + t*(c11+t*(c21+t*(c31+t*c41))), c02 + t*(c12+t*(c22+t*(c32+t*c42))), c03 + t*(c13+t*(c23+t*c33)),
		c04 + t*(c14+t*c24), c05 + t*c15, c06,
	}
	brix := s.atom("sugar, °Bx, in the working of "+s.label, a[0])
	celsius := s.atom("temperature, °C, in the working of "+s.label, toCelsius(a[1]))
	floats := s.apart("what the float pushes aside, kg in a cubic metre", formulaText(multiplying,
		density(s, []piece{brix, celsius}), "*(1+", 25e-6, "*(", celsius, "-", marked, "))"))
	w := formulaText(multiplying, brix, "/100")
	for k := range 4 {
		curve := polynomial(w, trade.Density(0, marked), m[0], m[1], m[2], m[3], m[4], m[5])
		slope := polynomial(w, m[0], 2*m[1], 3*m[2], 4*m[3], 5*m[4], 6*m[5])
		w = s.apart("the float's reading, as a share, nearer and nearer: "+string(rune('1'+k)),
			formulaText(adding, w, "-(", curve, "-", floats, ")/", slope))
	}
	reading := formulaText(multiplying, w, "*100")
	return call("IF", call("AND", piece{text: reading.text + ">=(-0.000000001)"}, piece{text: reading.text + "<=85.000000001"}),
		call("MIN", call("MAX", reading, number(0)), number(sweetest)), missing())
}

func toCelsius(fahrenheit piece) piece {
	if fahrenheit.fixed {
		return number((fahrenheit.value - 32) * 5 / 9)
	}
	return formulaText(multiplying, "(", fahrenheit, "-32)*5/9")
}
