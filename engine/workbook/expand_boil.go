package workbook

import "thawbook/engine/formula"

func boilExpansions() map[string]expansion {
	return map[string]expansion{
		"water_boils_at": func(s *speller, a []piece) piece { return waterBoilsAt(s, a[0]) },
		"draw_off_at":    drawOffAt,
		"boil_heat":      boilHeat,
		"pan_holds": func(s *speller, a []piece) piece {
			area, depth := s.atom("area, ft², in the working of "+s.label, a[0]), s.atom("depth, in, in the working of "+s.label, a[1])
			return guarded(formulaText(multiplying, area, "*", depth, "*144/231"), atLeast(area, 0), atLeast(depth, 0))
		},
		"wood_heat": func(s *speller, a []piece) piece {
			moisture := s.atom("water in the wood, as a share", a[0])
			return guarded(formulaText(adding, "8033-", moisture, "*9083"), within(moisture, 0, 0.85))
		},
		"bricks_for": bricksFor,
		"sheet_weight": func(s *speller, a []piece) piece {
			area, thick := s.atom("area, ft², in the working of "+s.label, a[0]), s.atom("thickness, in, in the working of "+s.label, a[1])
			return guarded(formulaText(multiplying, area, "*", thick, "*144*0.29"), atLeast(area, 0), atLeast(thick, 0))
		},
	}
}

// waterBoilsAt is the pressure of the US Standard Atmosphere 1976 at that height
// and the saturation equation of IAPWS-IF97, region 4, in °F.
func waterBoilsAt(s *speller, height piece) piece {
	feet := s.atom("height above the sea, ft", height)
	guard := within(feet, -1000, 20000)
	const inch = 3386.389e-6 // MPa in an inch of mercury
	pressure := s.apart("pressure of the air at that height, MPa",
		guarded(formulaText(multiplying, 29.9213*inch, "*EXP(5.2559*LN(1-", 6.8756e-6, "*", feet, "))"), guard))
	b2 := s.apart("its square root", call("SQRT", pressure))
	b := s.apart("its fourth root", call("SQRT", b2))
	e := s.apart("E of the saturation equation", formulaText(adding, b2, "+", -0.17073846940092e2, "*", b, "+", 0.14915108613530e2))
	f := s.apart("F of the saturation equation", formulaText(adding, 0.11670521452767e4, "*", b2, "+", 0.12020824702470e5, "*", b, "+", -0.48232657361591e4))
	g := s.apart("G of the saturation equation", formulaText(adding, -0.72421316703206e6, "*", b2, "+", -0.32325550322333e7, "*", b, "+", 0.40511340542057e6))
	const n9, n10 = -0.23855557567849, 0.65017534844798e3
	d := s.apart("650.2 and D of the saturation equation",
		formulaText(adding, n10, "+2*", g, "/((-", f, ")-SQRT(", f, "*", f, "-4*", e, "*", g, "))"))
	// (n10+D)² − 4 (n9 + n10 D), with D taken out of the sum that d is.
	kelvin := s.apart("where water boils at that height, K",
		formulaText(multiplying, "(", d, "-SQRT(", d, "*", d, "-4*(", n9, "+", n10, "*(", d, "-", n10, "))))/2"))
	return formulaText(adding, kelvin, "*1.8-459.67")
}

// drawOffAt is water's boil and the rise that the sugar makes.
func drawOffAt(s *speller, a []piece) piece {
	const (
		sugarPerWater = 18.015 / 342.30
		riseScale     = 8.31446 * 373.124 * 373.124 / 40655 * 1.8
		riseBend      = 4.80222350860353
	)
	brix := s.atom("sugar, °Bx, in the working of "+s.label, a[0])
	moles := s.apart("moles of sugar to one of water",
		guarded(formulaText(multiplying, sugarPerWater, "*", brix, "/(100-", brix, ")"), within(brix, 0, sweetest)))
	share := s.apart("the sugar's share of all moles", formulaText(multiplying, moles, "/(1+", moles, ")"))
	rise := s.apart("how far above water it boils, F°",
		formulaText(multiplying, riseScale, "*(LN(1+", moles, ")+", riseBend, "*", share, "^2)"))
	return formulaText(adding, waterBoilsAt(s, a[1]), "+", rise)
}

// boilHeat warms the sap to 212 °F and drives its water off.
func boilHeat(s *speller, a []piece) piece {
	const (
		gallonWeight = 231 * 0.0254 * 0.0254 * 0.0254 / 0.45359237 // kg/m³ to lb/gal
		perDegree    = 180.2 / 180
		latentHeat   = 970.3
	)
	sap := s.atom("sugar in the sap, °Bx", a[1])
	syrup := s.atom("sugar in the syrup, °Bx", a[2])
	feed := s.atom("the sap as it comes, °F", a[3])
	middle := formulaText(multiplying, "((", feed, "+212)/2-32)*5/9")
	warming := formulaText(multiplying, perDegree, "*(1+", sap, "/100*(460-2971+7.5*", middle, ")/4184)*(212-", feed, ")")
	tests := []condition{within(sap, 0, sweetest), above(syrup, 0, sweetest), within(feed, 32, 212)}
	each := guarded(formulaText(adding, warming, "+", latentHeat, "*(1-", sap, "/", syrup, ")"), tests...)
	if !sap.fixed || !syrup.fixed {
		each = call("IF", piece{text: sap.text + "<=" + syrup.text}, each, missing())
	}
	each = s.apart("BTU to boil a pound of that sap down", each)
	return formulaText(multiplying, a[0], "*", gallonWeight, "*", s.density20(sap), "*", each)
}

func bricksFor(s *speller, a []piece) piece {
	area := s.atom("area, ft², in the working of "+s.label, a[0])
	// The argument is the place of a name: flat is 0 and edge 1.
	side := func(place float64) piece {
		if place == 0 {
			return number(9 * 4.5)
		}
		return number(9 * 2.5)
	}
	var face piece
	switch {
	case a[1].fixed:
		face = side(a[1].value)
	case a[1].picked != nil:
		face = s.among(a[1].picked, func(n *formula.Node) piece { return side(n.Value) })
	default:
		return s.give("bricks_for is told how they lie in a way that no workbook can follow")
	}
	return guarded(formulaText(multiplying, area, "*144/", face), atLeast(area, 0))
}
