package units

import "strings"

// alike are words whose plural is their singular, or that end in s without
// being a plural.
var alike = map[string]bool{
	"series": true, "species": true, "gas": true, "lens": true, "canvas": true, "atlas": true,
	"tongs": true, "pliers": true, "scissors": true, "chassis": true, "apparatus": true, "news": true,
}

// odd are words whose plural follows no rule, by plural.
var odd = map[string]string{
	"people": "person", "feet": "foot", "men": "man", "women": "woman", "children": "child",
	"teeth": "tooth", "mice": "mouse", "geese": "goose", "loaves": "loaf", "shelves": "shelf",
	"knives": "knife", "halves": "half", "leaves": "leaf", "wives": "wife", "lives": "life",
	"cookies": "cookie", "brownies": "brownie", "smoothies": "smoothie", "pies": "pie", "ties": "tie", "dies": "die",
	"potatoes": "potato", "tomatoes": "tomato", "axes": "axe", "caches": "cache", "buses": "bus", "gases": "gas", "lenses": "lens", "quizzes": "quiz",
}

// singular is the singular of the last word of a lower-case English name, by
// the ordinary rules; what is no plural stays.
func singular(name string) string {
	at := strings.LastIndexAny(name, " -_") + 1
	return name[:at] + singularWord(name[at:])
}

func singularWord(w string) string {
	if s, ok := odd[w]; ok {
		return s
	}
	if alike[w] || len(w) < 3 {
		return w
	}
	cut := func(n int) string { return w[:len(w)-n] }
	switch {
	case hasEnd(w, "ss", "us", "is"):
		return w
	case hasEnd(w, "ies"):
		return cut(3) + "y"
	case hasEnd(w, "ches", "shes", "xes", "sses", "zzes"):
		return cut(2)
	case hasEnd(w, "s"):
		return cut(1)
	}
	return w
}

// plural is the plural of the last word of a singular English name.
func plural(name string) string {
	at := strings.LastIndexAny(name, " -_") + 1
	if w := name[at:]; len(w) < 3 || w[len(w)-1] < 'a' || w[len(w)-1] > 'z' {
		return name // an abbreviation, a number or another tongue
	}
	return name[:at] + pluralWord(name[at:])
}

func pluralWord(w string) string {
	for many, one := range odd {
		if one == w {
			return many
		}
	}
	n := len(w)
	switch {
	case alike[w]:
		return w
	case n > 1 && hasEnd(w, "y") && !strings.ContainsRune("aeiou", rune(w[n-2])):
		return w[:n-1] + "ies"
	case hasEnd(w, "s", "x", "ch", "sh", "zz"):
		return w + "es"
	}
	return w + "s"
}

func hasEnd(w string, ends ...string) bool {
	for _, end := range ends {
		if strings.HasSuffix(w, end) {
			return true
		}
	}
	return false
}
