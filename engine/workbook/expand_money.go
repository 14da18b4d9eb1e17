package workbook

func moneyExpansions() map[string]expansion {
	return map[string]expansion{
		"yearly_share": func(s *speller, a []piece) piece {
			price, years, rate := s.atom("price in the working of "+s.label, a[0]), s.atom("years in the working of "+s.label, a[1]), s.atom("rate in the working of "+s.label, a[2])
			left := s.atom("share left over, in the working of "+s.label, a[3])
			return guarded(formulaText(adding, price, "*(1-", left, ")/", s.annuity(years, rate), "+", price, "*", left, "*", rate),
				above(years, 0, 1000), within(left, 0, 1))
		},
		"worth_now": func(s *speller, a []piece) piece {
			years, rate := s.atom("years in the working of "+s.label, a[1]), s.atom("rate in the working of "+s.label, a[2])
			return formulaText(multiplying, a[0], "*", s.annuity(years, rate))
		},
		"years_to_repay": yearsToRepay,
		"jars_filled": func(s *speller, a []piece) piece {
			volume, size := s.atom("volume in the working of "+s.label, a[0]), s.atom("size in the working of "+s.label, a[1])
			waste := s.atom("share lost, in the working of "+s.label, a[2])
			return guarded(call("INT", formulaText(multiplying, volume, "*(1-", waste, ")/", size, "*1.000000001")),
				atLeast(volume, 0), condition{p: size, above: true, noHigh: true}, within(waste, 0, 1))
		},
		"units_sold": func(s *speller, a []piece) piece {
			price, usual := s.atom("price in the working of "+s.label, a[0]), s.atom("usual price in the working of "+s.label, a[1])
			units := s.atom("usual units in the working of "+s.label, a[2])
			return guarded(formulaText(multiplying, units, "*EXP(", a[3], "*LN(", price, "/", usual, "))"),
				condition{p: price, above: true, noHigh: true}, condition{p: usual, above: true, noHigh: true}, atLeast(units, 0))
		},
	}
}

// smallRate is below which a rate goes through a few terms of the annuity's
// series: the printed form then takes one nearly equal number from another.
const smallRate = 1e-6

// annuity is the worth now of 1 at the end of each year.
func (s *speller) annuity(years, rate piece) piece {
	few := formulaText(multiplying, years, "*(1-(", years, "+1)*", rate, "/2*(1-(", years, "+2)*", rate, "/3*(1-(", years, "+3)*", rate, "/4)))")
	many := formulaText(multiplying, "(1-(1+", rate, ")^(-", years, "))/", rate)
	out := call("IF", piece{text: rate.text + "<" + number(smallRate).text}, few, many)
	if rate.fixed {
		out = many
		if rate.value < smallRate {
			out = few
		}
	}
	return s.apart("worth today of 1 at the end of each year", guarded(out, within(years, 0, 1000), within(rate, 0, 10)))
}

// yearsToRepay has no number for never, which is an infinity here.
func yearsToRepay(s *speller, a []piece) piece {
	price, saving := s.atom("price in the working of "+s.label, a[0]), s.atom("yearly saving in the working of "+s.label, a[1])
	rate := s.atom("rate in the working of "+s.label, a[2])
	eaten := s.apart("the rate on the price as a share of the saving", formulaText(multiplying, price, "*", rate, "/", saving))
	long := call("IF", piece{text: rate.text + "=0"}, formulaText(multiplying, price, "/", saving),
		formulaText(multiplying, s.logOfOneAnd(formulaText(whole, "(-", eaten, ")")), "/(-", s.logOfOneAnd(rate), ")"))
	never := call("OR", piece{text: saving.text + "<=0"}, piece{text: price.text + "*" + rate.text + ">=" + saving.text})
	return guarded(call("IF", piece{text: price.text + "<=0"}, number(0), call("IF", never, missing(), long)), within(rate, 0, 10))
}

// logOfOneAnd is ln(1 + x), by its series where 1 + x would lose x's digits.
func (s *speller) logOfOneAnd(x piece) piece {
	few := formulaText(multiplying, x, "*(1-", x, "*(1/2-", x, "*(1/3-", x, "/4)))")
	return call("IF", piece{text: "ABS(" + x.text + ")<0.00001", deep: 1}, few, formulaText(whole, "LN(1+", x, ")"))
}
