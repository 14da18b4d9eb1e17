package calc

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

var (
	// numberForm is a number as people write one: a sign and groups of digits.
	numberForm = regexp.MustCompile(`^([-+−]?)\s*(\d[\d., '’]*|[.,]\d+)(e[-+]?\d+)?`)
	fraction   = regexp.MustCompile(`^([-+−]?)\s*(?:(\d+)\s+)?(\d+)\s*/\s*(\d+)`)
	groups     = regexp.MustCompile(`^\d{1,3}([ '’]\d{3})+([.,]\d+)?$|^\d{1,3}(,\d{3})+(\.\d*)?$|^\d{1,3}(\.\d{3})(\.\d{3})+(,\d*)?$|^\d{1,3}(\.\d{3})+,\d*$`)
)

// ReadNumber reads a number out of a text that a person typed: "1,240", "12,5",
// "$3.50", "1 1/2 gal", "5 %". rest is what stands beside it, a sign of money or
// a unit. It is false when the text does not begin with a number, or could mean
// more than one.
func ReadNumber(text string) (x float64, rest string, ok bool) {
	text = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ").Replace(strings.TrimSpace(text))
	if len(text) > 60 {
		return 0, "", false
	}
	before := ""
	for _, sign := range []string{"$", "€", "£"} {
		if cut, found := strings.CutPrefix(text, sign); found {
			before, text = sign, strings.TrimSpace(cut)
		}
	}
	x, n, ok := numberAt(strings.ToLower(text))
	if !ok {
		return 0, "", false
	}
	rest = before + strings.Trim(text[n:], " .")
	// A second number makes it a range or a date.
	if strings.ContainsAny(rest, "0123456789") && !strings.ContainsAny(rest, "²³") && !strings.Contains(rest, "ft2") {
		return 0, "", false
	}
	return x, rest, true
}

func numberAt(text string) (x float64, n int, ok bool) {
	if m := fraction.FindStringSubmatch(text); m != nil {
		whole, okWhole := grouped("0" + m[2])
		part, okPart := ratio(m[3], m[4])
		return signed(whole+part, m[1]), len(m[0]), okWhole && okPart
	}
	m := numberForm.FindStringSubmatch(text)
	if m == nil {
		return 0, 0, false
	}
	digits := strings.TrimRight(m[2], "., '’")
	n = len(m[0])
	if m[3] == "" {
		n = len(m[1]) + strings.Index(text[len(m[1]):], digits) + len(digits)
	}
	x, ok = grouped(digits)
	if ok && m[3] != "" {
		power, err := strconv.ParseFloat("1"+m[3], 64)
		x, ok = x*power, err == nil
	}
	return signed(x, m[1]), n, ok && !math.IsInf(x, 0)
}

func ratio(over, under string) (float64, bool) {
	a, err1 := strconv.ParseFloat(over, 64)
	b, err2 := strconv.ParseFloat(under, 64)
	return a / b, err1 == nil && err2 == nil && b != 0
}

func signed(x float64, sign string) float64 {
	if sign == "-" || sign == "−" {
		return -x
	}
	return x
}

// grouped reads digits with points, commas and spaces among them.
func grouped(digits string) (float64, bool) {
	points, commas := strings.Count(digits, "."), strings.Count(digits, ",")
	plain := strings.NewReplacer(" ", "", "'", "", "’", "").Replace(digits)
	switch {
	case groups.MatchString(digits):
		if strings.LastIndex(plain, ",") > strings.LastIndex(plain, ".") && (points > 0 || strings.ContainsAny(digits, " '’")) {
			plain = strings.ReplaceAll(strings.ReplaceAll(plain, ".", ""), ",", ".")
		} else if commas > 0 {
			plain = strings.ReplaceAll(plain, ",", "")
		} else if points > 1 {
			plain = strings.ReplaceAll(plain, ".", "")
		}
	case plain != digits || points+commas > 1:
		return 0, false
	default:
		plain = strings.ReplaceAll(plain, ",", ".")
	}
	x, err := strconv.ParseFloat(plain, 64)
	return x, err == nil
}
