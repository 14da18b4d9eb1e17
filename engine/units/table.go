package units

import "strings"

// def is one known unit.
type def struct {
	name  string // the canonical text
	also  string // other texts it is read from, between commas
	base  base
	scale exact // times a value: the value in SI units (m, kg, s, K), money or °Bx
	// onScale is the text of a temperature on a scale and zero how many of its
	// degrees absolute zero lies below its own zero.
	onScale string
	zero    exact
	// strict names are read in their own case only: mg is not Mg.
	strict bool
}

// The exact definitions everything else is made of.
var (
	inchScale  = ratio(254, 10000)                         // international yard and pound agreement, 1959
	poundScale = ratio(45359237, 100000000)                // the same
	gallonCube = whole(231).mul(inchScale.pow(3))          // US liquid gallon, 231 cubic inches
	footScale  = whole(12).mul(inchScale)                  // 0.3048 m
	gravity    = ratio(980665, 100000)                     // standard gravity, 3rd CGPM 1901
	btuScale   = ratio(105505585262, 100000000)            // International Table BTU, ISO 31-4
	calScale   = ratio(41868, 10000)                       // International Table calorie
	acreScale  = whole(43560).mul(footScale.pow(2))        // of the international foot
	mercury    = ratio(135951, 10).mul(gravity)            // conventional mercury, 13,595.1 kg/m³
	horse      = whole(550).mul(footScale).mul(poundForce) // 550 foot pounds a second
	poundForce = poundScale.mul(gravity)
	fahrenheit = ratio(5, 9)
)

// defs is every known unit. It is never written to.
var defs = []def{
	{name: "m", also: "metre,metres,meter,meters", base: length, scale: whole(1), strict: true},
	{name: "cm", also: "centimetre,centimetres,centimeter,centimeters", base: length, scale: ratio(1, 100)},
	{name: "mm", also: "millimetre,millimetres,millimeter,millimeters", base: length, scale: ratio(1, 1000), strict: true},
	{name: "km", also: "kilometre,kilometres,kilometer,kilometers", base: length, scale: whole(1000)},
	{name: "in", also: "inch,inches", base: length, scale: inchScale},
	{name: "ft", also: "foot,feet", base: length, scale: footScale},
	{name: "yd", also: "yds,yard,yards", base: length, scale: whole(3).mul(footScale)},
	{name: "mi", also: "mile,miles", base: length, scale: whole(5280).mul(footScale)},

	{name: "acre", also: "acres", base: area, scale: acreScale},
	{name: "ha", also: "hectare,hectares", base: area, scale: whole(10000)},

	{name: "gal", also: "gals,gallon,gallons", base: volume, scale: gallonCube},
	{name: "qt", also: "qts,quart,quarts", base: volume, scale: gallonCube.mul(ratio(1, 4))},
	{name: "pt", also: "pts,pint,pints", base: volume, scale: gallonCube.mul(ratio(1, 8))},
	{name: "cup", also: "cups", base: volume, scale: gallonCube.mul(ratio(1, 16))},
	{name: "fl oz", also: "floz,fluid oz,fluid ounce,fluid ounces,fl ounce,fl ounces", base: volume, scale: gallonCube.mul(ratio(1, 128))},
	{name: "tbsp", also: "tbsps,tablespoon,tablespoons", base: volume, scale: gallonCube.mul(ratio(1, 256))},
	{name: "tsp", also: "tsps,teaspoon,teaspoons", base: volume, scale: gallonCube.mul(ratio(1, 768))},
	{name: "L", also: "l,litre,litres,liter,liters", base: volume, scale: ratio(1, 1000), strict: true},
	{name: "mL", also: "ml,millilitre,millilitres,milliliter,milliliters", base: volume, scale: ratio(1, 1000000), strict: true},
	{name: "cord", also: "cords", base: volume, scale: whole(128).mul(footScale.pow(3))},
	{name: "board foot", also: "board feet,board ft,bd ft", base: volume, scale: footScale.pow(3).mul(ratio(1, 12))},

	{name: "lb", also: "lbs,pound,pounds", base: mass, scale: poundScale},
	{name: "oz", also: "ounce,ounces", base: mass, scale: poundScale.mul(ratio(1, 16))},
	{name: "g", also: "gram,grams,gramme,grammes", base: mass, scale: ratio(1, 1000), strict: true},
	{name: "kg", also: "kgs,kilo,kilos,kilogram,kilograms", base: mass, scale: whole(1)},
	{name: "mg", also: "milligram,milligrams", base: mass, scale: ratio(1, 1000000), strict: true},
	{name: "ton", also: "tons,short ton,short tons", base: mass, scale: whole(2000).mul(poundScale)},
	{name: "t", also: "tonne,tonnes,metric ton,metric tons", base: mass, scale: whole(1000), strict: true},

	{name: "s", also: "sec,secs,second,seconds", base: duration, scale: whole(1), strict: true},
	{name: "min", also: "mins,minute,minutes", base: duration, scale: whole(60)},
	{name: "h", also: "hr,hrs,hour,hours", base: duration, scale: whole(3600), strict: true},
	{name: "day", also: "days", base: duration, scale: whole(86400)},
	{name: "week", also: "weeks,wk,wks", base: duration, scale: whole(7 * 86400)},
	{name: "month", also: "months", base: duration, scale: ratio(36525*864, 12)},
	{name: "year", also: "years,yr,yrs", base: duration, scale: whole(36525 * 864)}, // 365.25 days

	{name: "F°", also: "Δ°F,ΔF", base: temperature, scale: fahrenheit, onScale: "°F", zero: ratio(45967, 100), strict: true},
	{name: "C°", also: "Δ°C,ΔC", base: temperature, scale: whole(1), onScale: "°C", zero: ratio(27315, 100), strict: true},
	{name: "K°", also: "Δ°K,ΔK", base: temperature, scale: whole(1), onScale: "K", strict: true},

	{name: "BTU", also: "BTUs", base: energy, scale: btuScale},
	{name: "kBTU", also: "kBTUs", base: energy, scale: whole(1000).mul(btuScale)},
	{name: "MMBTU", also: "MMBTUs", base: energy, scale: whole(1000000).mul(btuScale)},
	{name: "therm", also: "therms", base: energy, scale: whole(100000).mul(btuScale)},
	{name: "J", also: "joule,joules", base: energy, scale: whole(1), strict: true},
	{name: "kJ", also: "kilojoule,kilojoules", base: energy, scale: whole(1000)},
	{name: "MJ", also: "megajoule,megajoules", base: energy, scale: whole(1000000), strict: true},
	{name: "GJ", also: "gigajoule,gigajoules", base: energy, scale: whole(1000000000)},
	{name: "Wh", also: "watt hour,watt hours,watt-hour,watt-hours", base: energy, scale: whole(3600)},
	{name: "kWh", also: "kWhs,kilowatt hour,kilowatt hours,kilowatt-hour,kilowatt-hours", base: energy, scale: whole(3600000)},
	{name: "cal", also: "calorie,calories", base: energy, scale: calScale, strict: true},
	{name: "kcal", also: "kilocalorie,kilocalories", base: energy, scale: whole(1000).mul(calScale)},

	{name: "W", also: "watt,watts", base: power, scale: whole(1), strict: true},
	{name: "kW", also: "kilowatt,kilowatts", base: power, scale: whole(1000)},
	{name: "hp", also: "horsepower", base: power, scale: horse},

	{name: "Pa", also: "pascal,pascals", base: pressure, scale: whole(1), strict: true},
	{name: "kPa", also: "kilopascal,kilopascals", base: pressure, scale: whole(1000)},
	{name: "inHg", also: "in Hg,inches Hg", base: pressure, scale: mercury.mul(inchScale)},
	{name: "psi", base: pressure, scale: poundForce.div(inchScale.pow(2))},
	{name: "mbar", also: "millibar,millibars,hPa", base: pressure, scale: whole(100)},
	{name: "atm", also: "atmosphere,atmospheres", base: pressure, scale: whole(101325)},

	{name: "°Bx", also: "°Brix,° Brix,Bx,Brix,degrees Brix,degree Brix,deg Brix", base: sugar, scale: whole(1), strict: true},

	{name: "%", also: "percent", base: plain, scale: ratio(1, 100)},
	{name: "ppm", base: plain, scale: ratio(1, 1000000)},

	{name: "$", also: "€,£,¥,dollar,dollars", base: money, scale: whole(1)},
	{name: "¢", also: "cent,cents", base: money, scale: ratio(1, 100)},
}

// scaleNames are the texts that mean a temperature on a scale when they stand
// alone, by the difference they count in.
var scaleNames = map[string]string{
	"F°": "°F,° F,degF,deg F,degree F,degrees F,degrees Fahrenheit,degree Fahrenheit,fahrenheit,℉",
	"C°": "°C,° C,degC,deg C,degree C,degrees C,degrees Celsius,degree Celsius,celsius,℃",
	"K°": "K,°K,kelvin,kelvins",
}

// compounds are single words for a product of several known units.
var compounds = map[string][]term{
	"mph":  {{def: must("mi"), exp: 1}, {def: must("h"), exp: -1}},
	"gph":  {{def: must("gal"), exp: 1}, {def: must("h"), exp: -1}},
	"gpm":  {{def: must("gal"), exp: 1}, {def: must("min"), exp: -1}},
	"cfm":  {{def: must("ft"), exp: 3}, {def: must("min"), exp: -1}},
	"kph":  {{def: must("km"), exp: 1}, {def: must("h"), exp: -1}},
	"BTUh": {{def: must("BTU"), exp: 1}, {def: must("h"), exp: -1}},
}

// must finds a def by its canonical text, for tables within this package.
func must(name string) *def {
	for i := range defs {
		if defs[i].name == name {
			return &defs[i]
		}
	}
	panic("units: no definition of " + name)
}

// reading is what a name is read as.
type reading struct {
	terms []term
	scale bool // a temperature on a scale, when it stands alone
}

// known holds every name in its own case and anyCase in lower case those that
// may be written in any. Neither is written to once made.
var known, anyCase = index()

func index() (exactly, folded map[string]reading) {
	exactly, folded = map[string]reading{}, map[string]reading{}
	put := func(name string, r reading, strict bool) {
		exactly[name] = r
		if low := strings.ToLower(name); len(low) > 1 && (!strict || len(low) > 3) {
			folded[low] = r
		}
	}
	for i := range defs {
		d := &defs[i]
		for _, name := range d.names() {
			put(name, reading{terms: []term{{def: d, exp: 1}}}, d.strict)
		}
		if d.base == length {
			for _, name := range d.names() {
				put("sq "+name, reading{terms: []term{{def: d, exp: 2}}}, d.strict)
				put("square "+name, reading{terms: []term{{def: d, exp: 2}}}, d.strict)
				put("cu "+name, reading{terms: []term{{def: d, exp: 3}}}, d.strict)
				put("cubic "+name, reading{terms: []term{{def: d, exp: 3}}}, d.strict)
			}
		}
		for name := range strings.SplitSeq(scaleNames[d.name], ",") {
			if name != "" {
				put(name, reading{terms: []term{{def: d, exp: 1}}, scale: true}, false)
			}
		}
	}
	for name, terms := range compounds {
		put(name, reading{terms: terms}, false)
	}
	return exactly, folded
}

func (d *def) names() []string {
	names := []string{d.name}
	if d.also != "" {
		names = append(names, strings.Split(d.also, ",")...)
	}
	return names
}
