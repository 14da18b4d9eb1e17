package units

import (
	"math"
	"strconv"
	"strings"
)

// noNumber is what a value that is none is shown as.
const noNumber = "no number"

// Show writes a value with its unit for a person to read: "12.3 gal", "$1,240",
// "$42.10/gal", "140 taps", "219.1 °F", "4.5 %", "yes". Numbers are rounded as
// Number says. A NaN or an infinity is "no number", except that a time without
// end is "never".
func Show(x float64, u Unit) string {
	p := u.parts()
	if p.dim == (Dim{base: duration}) && math.IsInf(x, 1) {
		return "never"
	}
	number := Number(x, u)
	switch {
	case number == noNumber || p.yes || p.text == "1" || len(p.terms) == 0:
		return number
	case p.head > 0:
		return beforeSum(lead(p.terms).text(), number) + p.text[p.head:]
	}
	label := u.label(number == "1" || number == "-1")
	if below, ok := strings.CutPrefix(label, "1/"); ok {
		return number + " per " + below
	}
	return number + " " + label
}

// UnitLabel is the unit part alone, for the head of a column: "gal", "taps",
// "$/gal", "per tap"; nothing for a bare number.
func UnitLabel(u Unit) string {
	p := u.parts()
	switch {
	case p.text == "1":
		return ""
	case p.head > 0:
		return lead(p.terms).text() + p.text[p.head:]
	}
	label := u.label(false)
	if below, ok := strings.CutPrefix(label, "1/"); ok {
		return "per " + below
	}
	return label
}

// beforeSum puts a currency's sign, or its code and a space, before a number
// and behind the minus.
func beforeSum(sign, number string) string {
	if len(sign) == 3 && sign[0] < 0x80 {
		sign += " "
	}
	if rest, negative := strings.CutPrefix(number, "-"); negative {
		return "-" + sign + rest
	}
	return sign + number
}

// Number writes a value without its unit. Three significant digits under 1,000
// and whole above, thousands apart by commas; zeros behind the point are left
// off. Money has two decimals under 100 and none above; less than 0.10 keeps
// three significant digits. Temperatures have one decimal. Below a millionth
// and from 10¹⁵ up a power of ten stands behind. yes/no is "yes" for 1, "no" for
// 0 and a share for a mean between them. Nothing is shown as "-0".
func Number(x float64, u Unit) string {
	p := u.parts()
	a := math.Abs(x)
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return noNumber
	case p.yes:
		return yesNoText(x)
	case a >= 1e15 || a < 1e-6 && a > 0:
		return powerOfTen(x)
	case p.dim == (Dim{base: temperature}) && a < 999.95:
		return unsigned(strconv.FormatFloat(x, 'f', 1, 64))
	case p.head > 0:
		return sum(x)
	}
	return significant(x)
}

func yesNoText(x float64) string {
	switch x {
	case 1:
		return "yes"
	case 0:
		return "no"
	}
	return significant(x*100) + " % yes"
}

// sum writes money.
func sum(x float64) string {
	a := math.Abs(x)
	switch {
	case a == 0:
		return "0"
	case a < 0.0995:
		text := significant(x)
		if _, after, _ := strings.Cut(text, "."); len(after) < 2 {
			return strconv.FormatFloat(x, 'f', 2, 64)
		}
		return text
	case a < 99.995:
		return strconv.FormatFloat(x, 'f', 2, 64)
	}
	return grouped(x)
}

// significant writes three digits that count, or all of a larger whole.
func significant(x float64) string {
	if math.Abs(x) >= 999.5 {
		return grouped(x)
	}
	if x == 0 {
		return "0"
	}
	// The exponent is read after rounding, because 9.996 is 10.0 and not 10.00.
	scientific := strconv.FormatFloat(x, 'e', 2, 64)
	_, exp, _ := strings.Cut(scientific, "e")
	power, _ := strconv.Atoi(exp) // FormatFloat wrote it
	text := strconv.FormatFloat(x, 'f', max(0, 2-power), 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return unsigned(text)
}

// grouped writes a whole number with commas between thousands.
func grouped(x float64) string {
	digits := unsigned(strconv.FormatFloat(math.Round(x), 'f', 0, 64))
	body, negative := strings.CutPrefix(digits, "-")
	for at := len(body) - 3; at > 0; at -= 3 {
		body = body[:at] + "," + body[at:]
	}
	if negative {
		return "-" + body
	}
	return body
}

// powerOfTen writes what plain digits would hide.
func powerOfTen(x float64) string {
	text := strconv.FormatFloat(x, 'e', 2, 64)
	digits, exp, _ := strings.Cut(text, "e")
	power, _ := strconv.Atoi(exp) // FormatFloat wrote it
	return strings.TrimRight(strings.TrimRight(digits, "0"), ".") + " × 10" + raised(power)
}

// unsigned takes the minus off a number that rounds to nothing.
func unsigned(text string) string {
	if strings.HasPrefix(text, "-") && strings.Trim(text, "-0.") == "" {
		return text[1:]
	}
	return text
}

// spelled are the known units written as words, which take a plural.
var spelled = " day week month year hour minute second gallon quart pint cup ounce pound ton tonne kilo acre hectare " +
	"cord therm inch foot yard mile metre meter litre liter tablespoon teaspoon dollar cent watt joule calorie "

// label is the unit's text in the singular or the plural. Counts and units
// spelled as words have both, when they stand alone; all others are signs.
func (u Unit) label(one bool) string {
	p := u.parts()
	if len(p.terms) != 1 || p.terms[0].exp != 1 || strings.ContainsAny(p.text, "/*·×⋅^") {
		return p.text
	}
	name := singular(p.text)
	if p.terms[0].def != nil && !strings.Contains(spelled, " "+name+" ") {
		return p.text
	}
	if one {
		return name
	}
	return plural(name)
}
