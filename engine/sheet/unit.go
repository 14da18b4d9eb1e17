package sheet

import (
	"errors"
	"strings"

	"thawbook/engine/units"
)

// readUnit says what is wrong with a unit's text, or what is doubtful about it.
func readUnit(text, money string) (problem, hint, doubt string) {
	unit, err := units.Parse(text, money)
	var fault *units.ParseError
	if errors.As(err, &fault) {
		return fault.Message, fault.Hint, ""
	}
	return "", "", strings.Join(unit.Doubts(), "; ")
}
