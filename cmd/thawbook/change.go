package main

import (
	"math"
	"strconv"
	"strings"

	"thawbook/engine"
	"thawbook/engine/diag"
	"thawbook/engine/sheet"
)

// apply makes the changes asked for with --change to the open book; the file
// stays as it is. A change that the sheet does not take is the command's
// mistake, not the sheet's, and what was found wrong in the file still is.
func (o *opened) apply(changes []string) error {
	for _, text := range changes {
		edit, err := readChange(text, o.book.View())
		if err != nil {
			return err
		}
		book, refused := o.book.Try(edit)
		if refused.Errors() > 0 {
			return badChange(text, refused[0])
		}
		for _, d := range book.Diagnostics() {
			if d.Severity == diag.Error && !contains(o.found, d) {
				return badChange(text, d)
			}
		}
		o.book = book
	}
	return nil
}

func badChange(text string, d diag.Diagnostic) error {
	return failure{
		status:  statusCommandWrong,
		message: "--change " + clean(text) + ": " + clean(d.Message),
		hint:    d.Hint,
	}
}

// contains looks for d by what it says; a change may have moved its place.
func contains(list diag.List, d diag.Diagnostic) bool {
	for _, other := range list {
		if other.Code == d.Code && other.About == d.About && other.Message == d.Message {
			return true
		}
	}
	return false
}

// readChange reads "id=value". The value is a number ("150"), a guess as low,
// likely and high ("5/9/14"), for a line that is a choice one of its names, and
// otherwise a formula.
func readChange(text string, view engine.View) (sheet.Edit, error) {
	id, value, found := strings.Cut(text, "=")
	id, value = strings.TrimSpace(id), strings.TrimSpace(value)
	if !found || id == "" || value == "" {
		return sheet.Edit{}, failure{
			status:  statusCommandWrong,
			message: "--change " + clean(text) + ": not a line's id and its new value",
			hint:    "write --change taps=150, --change sap_per_tap=5/9/14 or --change fuel=propane",
		}
	}
	edit := sheet.Edit{About: id}
	numbers := readNumbers(value)
	switch {
	case len(numbers) == 1:
		edit.Set.Is = &numbers[0]
	case len(numbers) == 3:
		edit.Set.Guess = &sheet.GuessValue{Low: numbers[0], Likely: numbers[1], High: numbers[2]}
	case isChoice(view, id):
		edit.Set.Choose = &value
	default:
		edit.Set.Formula = &value
	}
	return edit, nil
}

// readNumbers reads numbers with "/" between them, nil when any part is none.
func readNumbers(text string) []float64 {
	var numbers []float64
	for part := range strings.SplitSeq(text, "/") {
		x, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
		if err != nil || math.IsInf(x, 0) || math.IsNaN(x) {
			return nil
		}
		numbers = append(numbers, x)
	}
	return numbers
}

func isChoice(view engine.View, id string) bool {
	for _, chapter := range view.Chapters {
		for _, line := range chapter.Lines {
			if line.ID == id {
				return line.Kind == "choose"
			}
		}
	}
	return false
}
