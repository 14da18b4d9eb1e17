package units

import (
	"slices"
	"strconv"
	"strings"
)

// base counts the base dimensions of a unit.
type base [6]int8

// The places within base.
const (
	lengthAt = iota
	massAt
	timeAt
	temperatureAt
	moneyAt
	sugarAt
)

// The dimensions that have a name.
var (
	plain       = base{}
	length      = base{lengthAt: 1}
	area        = base{lengthAt: 2}
	volume      = base{lengthAt: 3}
	mass        = base{massAt: 1}
	duration    = base{timeAt: 1}
	temperature = base{temperatureAt: 1}
	energy      = base{massAt: 1, lengthAt: 2, timeAt: -2}
	power       = base{massAt: 1, lengthAt: 2, timeAt: -3}
	pressure    = base{massAt: 1, lengthAt: -1, timeAt: -2}
	money       = base{moneyAt: 1}
	sugar       = base{sugarAt: 1}
)

// named is in the order in which a quotient is named: energy/mass before
// length²/time².
var named = []struct {
	base base
	name string
}{
	{energy, "energy"}, {power, "power"}, {money, "money"}, {volume, "volume"}, {area, "area"},
	{mass, "mass"}, {length, "length"}, {duration, "time"}, {temperature, "temperature"},
	{sugar, "°Bx"},
}

// A heat by volume and a pressure are one dimension. Alone it is named
// as both; beside a count it is the energy/volume that sheets have.
const pressureName = "pressure or energy/volume"

var baseNames = [len(base{})]string{"length", "mass", "time", "temperature", "money", "°Bx"}

// most is the largest exponent a dimension keeps. A working that goes beyond it
// has no unit anyone means, and Same holds it for like nothing.
const most = 99

// Dim is what is counted, without how large one of it is: volume for gal and L
// alike. Two Dims are compared with ==. The zero Dim is that of a bare number.
// °F and F° have the same Dim; Unit.IsAbsolute tells them apart.
type Dim struct {
	base   base
	counts string // "box^-1 jar": the counts in order, with their exponents
	beyond bool   // an exponent went past most
}

const yesNoCounts = "yes/no" // no count's name has a slash in it

// IsPlain says whether the dimension is that of a bare number.
func (d Dim) IsPlain() bool { return d == Dim{} }

// String names the dimension for a message: "volume", "mass/volume", "tap",
// "money/time", and for a bare number "bare number". What has no name is
// written in base dimensions, as in "mass·length".
func (d Dim) String() string {
	if d.IsPlain() {
		return "bare number"
	}
	switch d {
	case Dim{counts: yesNoCounts}:
		return yesNoCounts
	case Dim{base: pressure}:
		return pressureName
	}
	over, under := d.base.names()
	for _, field := range splitCounts(d.counts) {
		name, exp := field.name, field.exp
		if exp > 0 {
			over = append(over, name+superscript(exp))
		} else {
			under = append(under, name+superscript(-exp))
		}
	}
	return quotient(over, under)
}

// names splits a base into names above and below the stroke, trying one name,
// one over one, two over none, one over two, and then base dimensions.
func (b base) names() (over, under []string) {
	if b == plain {
		return nil, nil
	}
	if n, ok := nameOf(b); ok {
		return []string{n}, nil
	}
	if n, ok := nameOf(plain.minus(b)); ok {
		return nil, []string{n}
	}
	for _, n := range named {
		if u, ok := nameOf(n.base.minus(b)); ok {
			return []string{n.name}, []string{u}
		}
	}
	for _, n := range named {
		if m, ok := nameOf(b.minus(n.base)); ok {
			return []string{n.name, m}, nil
		}
	}
	for _, n := range named {
		for _, m := range named {
			if u, ok := nameOf(n.base.minus(b).minus(m.base)); ok {
				return []string{n.name}, []string{m.name, u}
			}
		}
	}
	return b.baseNames()
}

func (b base) baseNames() (over, under []string) {
	for i, exp := range b {
		switch {
		case exp > 0:
			over = append(over, baseNames[i]+superscript(int(exp)))
		case exp < 0:
			under = append(under, baseNames[i]+superscript(-int(exp)))
		}
	}
	return over, under
}

func nameOf(b base) (string, bool) {
	for _, n := range named {
		if b == n.base {
			return n.name, true
		}
	}
	return "", false
}

func (b base) minus(o base) base {
	for i := range b {
		b[i] = int8(bounded(int(b[i]) - int(o[i])))
	}
	return b
}

func bounded(n int) int { return max(-most-1, min(most+1, n)) }

func isBeyond(n int) bool { return n < -most || n > most }

// count is one word that is no known unit, with its exponent.
type count struct {
	name string
	exp  int
}

func joinCounts(counts []count) string {
	if len(counts) == 1 && counts[0].exp == 1 {
		return counts[0].name
	}
	slices.SortFunc(counts, func(a, b count) int { return strings.Compare(a.name, b.name) })
	parts := make([]string, len(counts))
	for i, c := range counts {
		parts[i] = c.name
		if c.exp != 1 {
			parts[i] += "^" + strconv.Itoa(c.exp)
		}
	}
	return strings.Join(parts, "·") // no count's name has a dot in it
}

func splitCounts(text string) []count {
	if text == "" {
		return nil
	}
	var out []count
	for part := range strings.SplitSeq(text, "·") {
		name, exp, has := strings.Cut(part, "^")
		n := 1
		if has {
			n, _ = strconv.Atoi(exp) // joinCounts wrote it
		}
		out = append(out, count{name, n})
	}
	return out
}

// quotient writes names as in "a·b/c/d", with a 1 above an empty stroke.
func quotient(over, under []string) string {
	text := strings.Join(over, "·")
	if text == "" {
		text = "1"
	}
	for _, u := range under {
		text += "/" + u
	}
	return text
}

// superscript writes an exponent, and nothing for 1.
func superscript(n int) string {
	if n == 1 {
		return ""
	}
	return raised(n)
}

var raisedDigits = strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴",
	"5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")

func raised(n int) string { return raisedDigits.Replace(strconv.Itoa(n)) }
