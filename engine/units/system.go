package units

// System is the family of units a sheet is shown in. Only what is shown
// changes; the sheet keeps what its author wrote.
type System int

const (
	AsWritten System = iota // each unit as its author wrote it
	Customary               // US customary
	Metric                  // litres, kilograms, metres, °C
)

var systemNames = [...]string{AsWritten: "as-written", Customary: "customary", Metric: "metric"}

// String is "as-written", "customary" or "metric".
func (s System) String() string {
	if s < 0 || int(s) >= len(systemNames) {
		return "unknown"
	}
	return systemNames[s]
}

// ParseSystem reads what String writes, and "" as as-written. It is false for
// anything else.
func ParseSystem(text string) (System, bool) {
	if text == "" {
		return AsWritten, true
	}
	for s, name := range systemNames {
		if text == name {
			return System(s), true
		}
	}
	return AsWritten, false
}

// swaps says what each unit becomes in the other family. Units in neither list
// stay: counts, money, time, °Bx, %, kWh, which both families use.
var (
	toMetric = swaps(map[string]string{
		"in": "cm", "ft": "m", "yd": "m", "mi": "km", "acre": "ha",
		"gal": "L", "qt": "L", "pt": "mL", "cup": "mL", "fl oz": "mL", "tbsp": "mL", "tsp": "mL",
		"cord": "m³", "board foot": "m³", "lb": "kg", "oz": "g", "ton": "t", "F°": "C°",
		"BTU": "MJ", "kBTU": "MJ", "therm": "MJ", "MMBTU": "GJ", "hp": "kW", "psi": "kPa", "inHg": "kPa",
	})
	toCustomary = swaps(map[string]string{
		"mm": "in", "cm": "in", "m": "ft", "km": "mi", "ha": "acre", "L": "gal", "mL": "fl oz",
		"mg": "oz", "g": "oz", "kg": "lb", "t": "ton", "C°": "F°", "K°": "F°",
		"J": "BTU", "kJ": "BTU", "MJ": "BTU", "cal": "BTU", "kcal": "BTU", "GJ": "MMBTU",
		"W": "BTU/h", "kW": "BTU/h", "Pa": "psi", "kPa": "psi", "mbar": "inHg", "atm": "inHg",
	})
)

// togethers are pairs that change as one, ahead of swaps: heat by time is power,
// and heat by degree is small enough for kJ.
var togethers = []struct {
	over, under, becomes string
}{
	{"BTU", "h", "kW"}, {"kBTU", "h", "kW"}, {"MMBTU", "h", "kW"}, {"therm", "h", "kW"}, {"BTU", "min", "kW"}, {"BTU", "s", "kW"},
	{"BTU", "F°", "kJ/C°"},
}

func swaps(names map[string]string) map[*def][]term {
	out := make(map[*def][]term, len(names))
	for from, to := range names {
		out[must(from)] = termsOf(to)
	}
	return out
}

func termsOf(text string) []term {
	u, err := Parse(text, "")
	if err != nil {
		panic("units: a table of this package has the unit " + text)
	}
	return u.parts().terms
}

// In is the unit to show u in: of the same dimension, each term taken to its
// counterpart in the family. A unit that is of the family already, or of both,
// is returned as it was written. Values are brought there by Convert.
func (u Unit) In(s System) Unit {
	p := u.parts()
	var table map[*def][]term
	switch s {
	case Metric:
		table = toMetric
	case Customary:
		table = toCustomary
	default:
		return u
	}
	terms, changed := p.terms, false
	if s == Metric {
		terms, changed = joined(terms)
	}
	out := make([]term, 0, len(terms)+1)
	for _, t := range terms {
		next, ok := table[t.def]
		if !ok || t.exp != 1 && len(next) > 1 {
			// One over kW would read $·h/BTU, which is no price anyone knows.
			out = merge(out, t)
			continue
		}
		changed = true
		for _, n := range next {
			n.exp *= t.exp
			out = merge(out, n)
		}
	}
	switch {
	case !changed:
		return u
	case p.scaly:
		return build(out).Absolute()
	}
	return build(out)
}

// joined takes pairs of terms together, on a copy when there is one.
func joined(terms []term) ([]term, bool) {
	changed := false
	for _, pair := range togethers {
		i, j := place(terms, pair.over), place(terms, pair.under)
		if i < 0 || j < 0 || terms[i].exp != -terms[j].exp {
			continue
		}
		exp := terms[i].exp
		var out []term
		for k, t := range terms {
			switch k {
			case i:
				for _, n := range termsOf(pair.becomes) {
					n.exp *= exp
					out = merge(out, n)
				}
			case j:
			default:
				out = merge(out, t)
			}
		}
		terms, changed = out, true
	}
	return terms, changed
}

func place(terms []term, name string) int {
	for i, t := range terms {
		if t.def != nil && t.def.name == name {
			return i
		}
	}
	return -1
}
