package back

import (
	"strings"

	"thawbook/engine/formula"
	"thawbook/engine/sheet"
	"thawbook/engine/workbook"
)

// entriesFrom are the entries that the sheet here would be sent with, for a
// workbook whose hidden list is lost. Formula lines have no working to compare.
func entriesFrom(here *formula.Plan, plan int) []workbook.Entry {
	var out []workbook.Entry
	for _, slot := range here.Slots {
		l := slot.Line
		if slot.Broken {
			continue
		}
		add := func(part workbook.Part, sent string) {
			out = append(out, workbook.Entry{Plan: plan, ID: l.ID, Part: part, Kind: l.Kind, Unit: l.Unit, Sent: sent})
		}
		switch l.Kind {
		case sheet.Is:
			add(workbook.Value, sheet.FormatNumber(l.Is))
		case sheet.Guess:
			add(workbook.Value, sheet.FormatNumber(l.Likely))
			add(workbook.Low, sheet.FormatNumber(l.Low))
			add(workbook.High, sheet.FormatNumber(l.High))
		case sheet.Choose:
			add(workbook.Value, l.Choose)
		case sheet.Records:
			var all []string
			for _, x := range l.Records {
				all = append(all, sheet.FormatNumber(x))
			}
			add(workbook.Past, strings.Join(all, " "))
		case sheet.Formula:
			add(workbook.Value, "")
			out[len(out)-1].Formula = l.Formula
		}
	}
	return out
}
