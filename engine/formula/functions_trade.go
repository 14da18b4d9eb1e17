package formula

import "thawbook/engine/trade"

func brix(name, summary string) Arg {
	return Arg{Name: name, Unit: "°Bx", Summary: summary, Min: 0, Max: 85}
}

func sapFunctions() []*Function {
	const balance = "sugar balance over the ICUMSA density equation"
	return []*Function{
		{Name: "density", Family: SapAndSyrup, Result: "kg/m³", F2: trade.Density,
			Summary: "Weight of a volume of sap or syrup, as a mass balance in vacuum would give it.",
			Example: `density(syrup_brix, of(68, "°F"))`, Source: "ICUMSA sucrose density equation",
			Args: []Arg{brix("brix", "sugar in it"), {Name: "temp", Unit: "°C", Summary: "its temperature", Min: 0, Max: 100}}},
		{Name: "sap_per_syrup", Family: SapAndSyrup, Result: "1", F2: trade.SapPerSyrup,
			Summary: "Volumes of sap that make one volume of syrup.",
			Example: "sap_per_syrup(sap_sugar, syrup_brix)", Source: balance,
			Args: []Arg{brix("sap_brix", "sugar in the sap"), brix("syrup_brix", "sugar in the syrup")}},
		{Name: "syrup_from", Family: SapAndSyrup, Scales: true, ResultAs: 1, F3: trade.SyrupFrom,
			Summary: "Syrup that a volume of sap makes when no sugar is lost.",
			Example: "syrup_from(sap, sap_sugar, syrup_brix)", Source: balance,
			Args: []Arg{{Name: "sap", Like: "gal", Summary: "sap put in"}, brix("sap_brix", "sugar in the sap"), brix("syrup_brix", "sugar in the syrup")}},
		{Name: "concentrate", Family: SapAndSyrup, Scales: true, ResultAs: 1, F3: trade.Concentrate,
			Summary: "Volume left when water is taken out until the sugar is to_brix.",
			Example: `concentrate(sap, sap_sugar, of(8, "°Bx"))`, Source: balance,
			Args: []Arg{{Name: "sap", Like: "gal", Summary: "sap put in"}, brix("from_brix", "sugar in the sap"), brix("to_brix", "sugar in what is left")}},
		{Name: "hydrometer", Family: SapAndSyrup, Result: "°Bx", F2: trade.Hydrometer,
			Summary: "What a float made for 60 °F reads in syrup of that sugar at that temperature.",
			Example: `hydrometer(syrup_brix, of(211, "°F"))`, Source: "density balance with the glass's own expansion",
			Args: []Arg{brix("brix", "sugar in the syrup"), {Name: "temp", Unit: "°F", Summary: "temperature of the syrup", Min: 32, Max: 212}}},
		{Name: "taps_in_tree", Family: SapAndSyrup, Result: "tap", F1: trade.TapsInTree,
			Summary: "Taps a trunk of that diameter bears: none under 12 in, one to 18 in, two above, never more.",
			Example: `taps_in_tree(of(16, "in"))`, Source: "conservative tapping guideline, North American manual",
			Args: []Arg{{Name: "diameter", Unit: "in", Summary: "trunk at breast height"}}},
	}
}

func boilingFunctions() []*Function {
	return []*Function{
		{Name: "water_boils_at", Family: Boiling, Result: "°F", F1: trade.WaterBoilsAt,
			Summary: "Where water boils at that height on a standard day. The day's own boiling water is the better guide.",
			Example: "water_boils_at(elevation)", Source: "US Standard Atmosphere 1976 and IAPWS-IF97",
			Args: []Arg{{Name: "elevation", Unit: "ft", Summary: "height above the sea", Min: -1000, Max: 20000}}},
		{Name: "draw_off_at", Family: Boiling, Result: "°F", F2: trade.DrawOffAt,
			Summary: "Where syrup of that sugar boils at that height on a standard day: 7.1 F° above water at 66 °Bx.",
			Example: "draw_off_at(syrup_brix, elevation)", Source: "University of Maine for 66 °Bx; sugar handbooks for the curve",
			Args: []Arg{brix("syrup_brix", "sugar in the syrup"), {Name: "elevation", Unit: "ft", Summary: "height above the sea", Min: -1000, Max: 20000}}},
		{Name: "boil_heat", Family: Boiling, Scales: true, Result: "BTU", F4: trade.BoilHeat,
			Summary: "Heat the pan must take up to bring sap to the boil and drive its water off, before any loss.",
			Example: `boil_heat(sap, sap_sugar, syrup_brix, of(35, "°F"))`, Source: "steam tables and the specific heat of sugar solutions",
			Args: []Arg{{Name: "sap", Unit: "gal", Summary: "sap put in"}, brix("sap_brix", "sugar in the sap"),
				brix("syrup_brix", "sugar in the syrup"), {Name: "feed_temp", Unit: "°F", Summary: "temperature of the sap as it comes", Min: 32, Max: 212}}},
		{Name: "pan_holds", Family: Boiling, Result: "gal", F2: trade.PanHolds,
			Summary: "What a pan holds at that depth.",
			Example: `pan_holds(pan_area, of(1.5, "in"))`, Source: "exact: 231 cubic inches to the gallon",
			Args: []Arg{{Name: "area", Unit: "ft²", Summary: "its floor"}, {Name: "depth", Unit: "in", Summary: "how deep the sap stands"}}},
	}
}

func fireFunctions() []*Function {
	return []*Function{
		{Name: "wood_heat", Family: FireAndRig, Result: "BTU/lb", F1: trade.WoodHeat,
			Summary: "Heat a pound of hardwood gives up as it lies, water in it and steam of it taken off.",
			Example: `wood_heat(of(20, "%"))`, Source: "net heat by moisture from 8,600 BTU/lb dry hardwood",
			Args: []Arg{{Name: "moisture", Unit: "1", Summary: "water as a share of the whole weight", Min: 0, Max: 0.85}}},
		{Name: "bricks_for", Family: FireAndRig, Result: "brick", F2: trade.BricksFor,
			Summary: "Firebricks of 9 × 4.5 × 2.5 in that cover an area, laid flat or on edge; add 5 to 10 % for cuts.",
			Example: `bricks_for(arch_area, "flat")`, Source: "exact from the brick's own size",
			Args: []Arg{{Name: "area", Unit: "ft²", Summary: "wall or floor to line"}, {Name: "laid", Names: []string{"flat", "edge"}, Summary: `"flat" or "edge"`}}},
		{Name: "sheet_weight", Family: FireAndRig, Result: "lb", F2: trade.SheetWeight,
			Summary: "Weight of stainless sheet (304) of that area and thickness.",
			Example: `sheet_weight(pan_sheet, of(0.0375, "in"))`, Source: "0.29 lb a cubic inch, value from memory",
			Args: []Arg{{Name: "area", Unit: "ft²", Summary: "sheet used"}, {Name: "thickness", Unit: "in", Summary: "in inches: gauge tables disagree"}}},
	}
}

func moneyFunctions() []*Function {
	const recovery = "capital recovery, engineering economy"
	years := Arg{Name: "years", Unit: "year", Summary: "how long it lasts", Min: 0, Max: 1000}
	rate := Arg{Name: "rate", Unit: "1", Summary: "what money costs a year, as a share", Min: 0, Max: 10}
	return []*Function{
		{Name: "yearly_share", Family: Money, Scales: true, ResultAs: 1, F4: trade.YearlyShare,
			Summary: "What a thing costs each year of its life, the money tied up in it counted.",
			Example: `yearly_share(price, life, of(5, "%"), left_over)`, Source: recovery,
			Args: []Arg{{Name: "price", Like: "$", Summary: "what it cost"}, years, rate,
				{Name: "left_over", Unit: "1", Summary: "share of the price it still fetches at the end", Min: 0, Max: 1}}},
		{Name: "worth_now", Family: Money, Scales: true, ResultAs: 1, F3: trade.WorthNow,
			Summary: "What a yearly sum over so many years is worth today.",
			Example: `worth_now(saved, of(10, "year"), of(5, "%"))`, Source: recovery,
			Args: []Arg{{Name: "yearly", Like: "$", Summary: "sum at the end of each year"}, years, rate}},
		{Name: "years_to_repay", Family: Money, Result: "year", F3: trade.YearsToRepay,
			Summary: "Years until what a thing saves has paid its price.",
			Example: `years_to_repay(price, saved, of(5, "%"))`, Source: recovery,
			Args: []Arg{{Name: "price", Like: "$", Summary: "what it costs"}, {Name: "yearly_saving", SameAs: 1, Summary: "what it saves a year"}, rate}},
	}
}

func sellingFunctions() []*Function {
	return []*Function{
		{Name: "jars_filled", Family: Selling, Result: "jar", F3: trade.JarsFilled, rule: jarsRule,
			Summary: "Whole jars that a volume fills. A size in gal/jug is answered in jugs, a bare volume in jars.",
			Example: `jars_filled(syrup, of(1, "pt"), of(1, "%"))`, Source: "exact",
			Args: []Arg{{Name: "volume", Like: "gal", Summary: "syrup to fill"}, {Name: "size", Like: "gal", Summary: "what one holds"},
				{Name: "waste", Unit: "1", Summary: "share lost in filling", Min: 0, Max: 1}}},
		{Name: "units_sold", Family: Selling, ResultAs: 3, F4: trade.UnitsSold,
			Summary: "What sells at another price: usual_units × (price ÷ usual_price) to the power of response.",
			Example: "units_sold(price, usual_price, usual_jars, -1.2)", Source: "constant elasticity of demand",
			Args: []Arg{{Name: "price", Any: true, Summary: "the price tried"}, {Name: "usual_price", SameAs: 1, Summary: "the price known"},
				{Name: "usual_units", Any: true, Summary: "what sells at the price known"}, {Name: "response", Unit: "1", Summary: "below zero: dearer sells less"}}},
	}
}
