package back

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"thawbook/engine/sheet"
	"thawbook/engine/units"
	"thawbook/engine/workbook"
)

// Said is what a line says it comes to. Of the kinds' own fields only those of
// Kind count.
type Said struct {
	Kind              sheet.Kind
	Is                float64
	Low, Likely, High float64
	Records           []float64
	Choose            string
	Formula           string
}

// saidBy is what a line of the sheet says.
func saidBy(l *sheet.Line) Said {
	return Said{Kind: l.Kind, Is: l.Is, Low: l.Low, Likely: l.Likely, High: l.High, Records: l.Records, Choose: l.Choose, Formula: l.Formula}
}

// sentBy is what the entries of one line say was sent.
func sentBy(entries []workbook.Entry) Said {
	out := Said{Kind: entries[0].Kind}
	for _, e := range entries {
		x, _ := e.Number()
		switch {
		case e.Part == workbook.Past:
			for _, word := range strings.Fields(e.Sent) {
				if x, err := strconv.ParseFloat(word, 64); err == nil {
					out.Records = append(out.Records, x)
				}
			}
		case e.Part == workbook.Low:
			out.Low = x
		case e.Part == workbook.High:
			out.High = x
		case e.Kind == sheet.Choose:
			out.Choose = e.Sent
		case e.Kind == sheet.Formula:
			out.Formula = e.Formula
		case e.Kind == sheet.Guess:
			out.Likely = x
		case e.Kind == sheet.Is:
			out.Is = x
		}
	}
	return out
}

// same says whether two say the same. Records count in any order, because a
// season is drawn from them all alike.
func (s Said) same(o Said) bool {
	if s.Kind != o.Kind {
		return false
	}
	switch s.Kind {
	case sheet.Is:
		return s.Is == o.Is
	case sheet.Guess:
		return s.Low == o.Low && s.Likely == o.Likely && s.High == o.High
	case sheet.Records:
		return slices.Equal(slices.Sorted(slices.Values(s.Records)), slices.Sorted(slices.Values(o.Records)))
	case sheet.Choose:
		return s.Choose == o.Choose
	}
	return s.Formula == o.Formula
}

// set is the edit that makes a line say s.
func (s Said) set() sheet.Set {
	switch s.Kind {
	case sheet.Is:
		return sheet.Set{Is: &s.Is}
	case sheet.Guess:
		return sheet.Set{Guess: &sheet.GuessValue{Low: s.Low, Likely: s.Likely, High: s.High}}
	case sheet.Records:
		return sheet.Set{Records: s.Records}
	case sheet.Choose:
		return sheet.Set{Choose: &s.Choose}
	}
	return sheet.Set{Formula: &s.Formula}
}

// middle is the one number a line says, when it says one.
func (s Said) middle() (float64, bool) {
	switch s.Kind {
	case sheet.Is:
		return s.Is, true
	case sheet.Guess:
		return s.Likely, true
	}
	return 0, false
}

// mostShown is how many records are shown before the rest are counted.
const mostShown = 6

// show is s in words, every number in full.
func (s Said) show(u units.Unit, names []sheet.Name) string {
	switch s.Kind {
	case sheet.Is:
		return showFull(s.Is, u)
	case sheet.Guess:
		return showFull(s.Likely, u) + ", from " + full(s.Low, u) + " to " + full(s.High, u)
	case sheet.Records:
		return showRecords(s.Records, u)
	case sheet.Choose:
		for _, n := range names {
			if n.ID == s.Choose && n.Label != "" {
				return n.Label
			}
		}
		return s.Choose
	}
	return s.Formula
}

func showRecords(records []float64, u units.Unit) string {
	var shown []string
	for _, x := range records[:min(len(records), mostShown)] {
		shown = append(shown, full(x, u))
	}
	text := strings.Join(shown, ", ")
	if n := len(records) - mostShown; n > 0 {
		text += " and " + strconv.Itoa(n) + " more"
	}
	return strings.TrimSpace(text + " " + units.UnitLabel(u))
}

// full is a number with every digit it has.
func full(x float64, u units.Unit) string {
	if u.IsYesNo() {
		return units.Show(x, u)
	}
	return sheet.FormatNumber(x)
}

// showFull is a number with its unit and every digit it has.
func showFull(x float64, u units.Unit) string {
	short := units.Show(x, u)
	number := units.Number(x, u)
	if u.IsYesNo() || !strings.Contains(short, number) {
		return short
	}
	if y, err := strconv.ParseFloat(strings.ReplaceAll(number, ",", ""), 64); err == nil && y == x {
		return short
	}
	return strings.Replace(short, number, grouped(x), 1)
}

// grouped is a number in full with commas between thousands.
func grouped(x float64) string {
	text := sheet.FormatNumber(x)
	if strings.ContainsAny(text, "eE") {
		return text
	}
	whole, rest, _ := strings.Cut(text, ".")
	sign := ""
	if strings.HasPrefix(whole, "-") {
		sign, whole = "-", whole[1:]
	}
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if rest != "" {
		rest = "." + rest
	}
	return sign + whole + rest
}

// moved says by how much a number went up or down.
func moved(from, to float64, u units.Unit) string {
	if u.IsYesNo() {
		return ""
	}
	sign := "+"
	if to < from {
		sign = "−"
	}
	text := sign + units.Show(math.Abs(to-from), u.Difference())
	if from != 0 {
		text += " (" + sign + units.Number(100*math.Abs(to-from)/math.Abs(from), units.One()) + " %)"
	}
	return text
}
