package trade

// Caution is a short warning about work that can hurt, with who says so.
type Caution struct {
	// Key is what a sheet writes to have it shown: "propane".
	Key string
	// Text is what to say. It defers to local codes and licensed practice.
	Text string
	// Source is the body or document it is taken from.
	Source string
}

// Cautions lists every caution a sheet may name by its key, in the order of the
// work. Free text on a line is shown as its author wrote it instead.
func Cautions() []Caution {
	return []Caution{
		{"trees", "One tap in a trunk 12 to 18 in across, two above that, never more; none under 10 to 12 in.",
			"conservative guideline, North American producers' manual; University of Vermont 2012 for 12 in"},
		{"sap_store", "Keep sap at 38 °F or colder and boil it within 7 days; warm or cloudy sap is not for syrup.",
			"state extension services"},
		{"pallets", "Never burn pallets marked MB (methyl bromide), nor painted, stained, pressure-treated or glued wood, nor any with unknown spills; HT means heat-treated. Nails stay in the ash.",
			"ISPM 15 (FAO) for the marks; Washington Department of Ecology and county air districts on treated wood"},
		{"propane", "Burn outdoors, at least 10 ft from a building, and leak-test every joint. Cylinders are not stored or used indoors; the gas is heavier than air and lies in low places.",
			"US CPSC; Minnesota State Fire Marshal; follow your local code"},
		{"charcoal", "Burn outdoors only: it gives off carbon monoxide as long as it glows.", "US CPSC"},
		{"under_a_roof", "Carbon monoxide and steam need a way out. Chimney 3 ft above the roof and 2 ft above anything within 10 ft; keep clearances to wood.",
			"NFPA 211 as carried by town codes; ask your building inspector"},
		{"drum", "Never cut or weld a tank or drum until it has been cleaned and purged; never presume that it is clean.",
			"California title 8 §5166, as OSHA 29 CFR 1910.252"},
		{"old_gear", "Lead solder (galvanised before 1994, other gear before 1995), brass, bronze and terneplate do not belong near sap: replace them.",
			"Ontario ministry of agriculture, best production practices"},
		{"hot_syrup", "Syrup at 219 °F sticks and burns; 140 °F burns skin in under 5 seconds. Keep children and hurry away from the pan.",
			"burn-prevention tables"},
		{"selling", "Weights and measures, labels and food licences differ by place: ask before the first jar is sold.",
			"your state or provincial department of agriculture"},
	}
}

// CautionFor is the caution of that key; false when there is none.
func CautionFor(key string) (Caution, bool) {
	for _, c := range Cautions() {
		if c.Key == key {
			return c, true
		}
	}
	return Caution{}, false
}
