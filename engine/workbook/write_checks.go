package workbook

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// rule is what a group of cells takes alike.
type rule struct {
	list, prompt    string
	low, high       float64
	hasLow, hasHigh bool
	mayBeBlank      bool
}

// mostCells is how many cells one rule names, so that no attribute grows beyond
// what programs read.
const mostCells = 200

// checks writes what the inputs take: lists to choose from, numbers within their
// bounds, and a colour for what is no number or a guess out of order.
func (s *sheetWriter) checks(g *grid) error {
	if len(g.checks) == 0 {
		return nil
	}
	var order []rule
	cells := map[rule][]string{}
	for _, c := range g.checks {
		r := rule{list: c.list, prompt: c.prompt, mayBeBlank: c.mayBeBlank}
		if c.low != nil {
			r.low, r.hasLow = *c.low, true
		}
		if c.high != nil {
			r.high, r.hasHigh = *c.high, true
		}
		if cells[r] == nil {
			order = append(order, r)
		}
		cells[r] = append(cells[r], c.place.String())
	}
	for _, r := range order {
		for at := 0; at < len(cells[r]); at += mostCells {
			if err := s.f.AddDataValidation(g.name, r.validation(cells[r][at:min(at+mostCells, len(cells[r]))])); err != nil {
				return err
			}
		}
	}
	return s.colours(g)
}

// widest is a number beyond any that a plan has: what a cell without a bound
// takes.
const widest = "1E+100"

func (r rule) validation(cells []string) *excelize.DataValidation {
	v := excelize.NewDataValidation(r.mayBeBlank)
	for _, c := range cells {
		v.SetSqref(c)
	}
	if r.prompt != "" {
		v.SetInput("", r.prompt)
	}
	if r.list != "" {
		v.SetSqrefDropList(r.list)
		v.SetError(excelize.DataValidationErrorStyleStop, "Choose", "Pick one of the list.")
		return v
	}
	// Set by hand, because the library writes bounds with digits they do not have.
	v.Type, v.Operator = "decimal", "between"
	v.Formula1, v.Formula2 = "-"+widest, widest
	var low, high *float64
	if r.hasLow {
		low, v.Formula1 = &r.low, plainNumber(r.low)
	}
	if r.hasHigh {
		high, v.Formula2 = &r.high, plainNumber(r.high)
	}
	v.SetError(excelize.DataValidationErrorStyleStop, "Not that", boundsText(low, high))
	return v
}

// plainNumber is a number where no brackets may stand.
func plainNumber(x float64) string {
	if x < 0 {
		return "-" + number(-x).text
	}
	return number(x).text
}

// colours marks inputs that are no number, and guesses out of order, because a
// pasted cell passes every check.
func (s *sheetWriter) colours(g *grid) error {
	if s.wrong == nil {
		id, err := s.f.NewConditionalStyle(&excelize.Style{Fill: filled("F4B6B0"), Font: &excelize.Font{Color: inkCare, Bold: true}})
		if err != nil {
			return err
		}
		s.wrong = &id
	}
	for _, c := range g.checks {
		if c.list != "" {
			continue
		}
		at := c.place.String()
		test := "NOT(ISNUMBER(" + at + "))"
		switch {
		case c.mayBeBlank:
			test = "ISTEXT(" + at + ")"
		case c.ofGuess:
			low, likely, high := place{c.lowAt, c.place.row}, place{c.valueAt, c.place.row}, place{c.highAt, c.place.row}
			test = fmt.Sprintf("OR(NOT(ISNUMBER(%s)),%s>%s,%s>%s)", at, low, likely, likely, high)
		}
		err := s.f.SetConditionalFormat(g.name, at, []excelize.ConditionalFormatOptions{{Type: "formula", Criteria: test, Format: s.wrong}})
		if err != nil {
			return err
		}
	}
	return nil
}
