package workbook

import (
	"math"
	"strconv"
	"strings"

	"thawbook/engine/units"
)

// The widest decimals shown: beyond these a number is shown in powers of ten.
const mostDecimals = 6

// format is the number format for numbers in a unit, judged by the numbers it
// will show first. exact shows every digit, as an input must.
func format(u units.Unit, exact bool, numbers ...float64) string {
	if u.IsYesNo() {
		return `[=1]"yes";[=0]"no";General`
	}
	largest, digits := 0.0, 0
	for _, x := range numbers {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			continue
		}
		largest = math.Max(largest, math.Abs(x))
		digits = max(digits, decimalsOf(x))
	}
	sign, isMoney := moneySign(u)
	switch {
	case largest >= 1e15 || largest > 0 && largest < 1e-5 || exact && digits > mostDecimals:
		return "General"
	case exact && isMoney && digits > 0:
		return money(sign, max(digits, 2))
	case exact && isMoney:
		return money(sign, 0)
	case exact:
		return decimals(digits)
	case isMoney && largest >= 99.995:
		return money(sign, 0)
	case isMoney && largest >= 0.0995:
		return money(sign, 2)
	case isMoney:
		return money(sign, significant(largest))
	case u.IsAbsolute() || isDegree(u):
		return decimals(1)
	}
	return decimals(significant(largest))
}

// significant is how many decimals show three digits of a number that size.
func significant(largest float64) int {
	if largest == 0 || largest >= 99.95 {
		return 0
	}
	return min(mostDecimals, max(0, 2-int(math.Floor(math.Log10(largest)))))
}

// decimalsOf is how many digits a number has behind its point.
func decimalsOf(x float64) int {
	_, after, _ := strings.Cut(strconv.FormatFloat(x, 'f', -1, 64), ".")
	return len(after)
}

func decimals(n int) string {
	if n == 0 {
		return "#,##0"
	}
	return "#,##0." + strings.Repeat("0", n)
}

// money puts the sign before the number and behind the minus.
func money(sign string, n int) string {
	sign = `"` + sign + `"`
	return sign + decimals(n) + ";-" + sign + decimals(n)
}

// moneySign is the sign that stands before numbers of the unit, such as $ of
// $/gal; false when it is no money.
func moneySign(u units.Unit) (string, bool) {
	shown := units.Show(1, u)
	sign, _, found := strings.Cut(shown, units.Number(1, u))
	if !found || sign == "" || strings.ContainsAny(sign, `"\`) {
		return "", false
	}
	return sign, true
}

func isDegree(u units.Unit) bool { return u.Absolute().IsAbsolute() }
