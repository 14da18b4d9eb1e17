package sheet

import (
	"regexp"
	"slices"
)

// idForm is what an id may look like.
var idForm = regexp.MustCompile(`^[a-z][a-z0-9_]*$`)

const maxID = 60 // characters of an id

// reservedWords are the formula language's own words.
func reservedWords() []string {
	return []string{"let", "and", "or", "not", "true", "false", "nil", "in", "if", "else", "matches", "contains"}
}

// FunctionNames are the defined functions. A line or column must not be called
// like one; package formula's tests hold the list to what it defines.
func FunctionNames() []string {
	return []string{
		"density", "sap_per_syrup", "syrup_from", "concentrate", "hydrometer", "taps_in_tree",
		"water_boils_at", "draw_off_at", "boil_heat", "pan_holds",
		"wood_heat", "bricks_for", "sheet_weight",
		"yearly_share", "worth_now", "years_to_repay",
		"jars_filled", "units_sold",
		"season_walk",
		"min", "max", "abs", "round", "floor", "ceil", "sqrt", "exp", "ln",
		"clamp", "between", "of", "number", "sum", "mean",
	}
}

// idFault says why formulas could not call something id, or "".
func idFault(id string) (fault, hint string) {
	switch {
	case !idForm.MatchString(id):
		return "is not an id", "small letters, digits and _, with a letter first: " + idFrom(id)
	case len(id) > maxID:
		return "is too long an id", "at most 60 letters"
	case slices.Contains(reservedWords(), id):
		return "is a word of the formula language", "call it " + id + "_line, or something better"
	}
	return "", ""
}

// functionFault is idFault for ids that formulas name bare.
func functionFault(id string) (fault, hint string) {
	if slices.Contains(FunctionNames(), id) {
		return "is the name of a function", "call it " + id + "_line, or something better"
	}
	return idFault(id)
}

// idFrom makes an id that resembles text.
func idFrom(text string) string {
	var out []byte
	for _, c := range []byte(text) {
		switch {
		case c >= 'A' && c <= 'Z':
			c += 'a' - 'A'
		case c >= 'a' && c <= 'z':
		case c >= '0' && c <= '9' && len(out) > 0:
		case len(out) > 0 && out[len(out)-1] != '_':
			c = '_'
		default:
			continue
		}
		out = append(out, c)
		if len(out) == maxID {
			break
		}
	}
	if len(out) > 0 && out[len(out)-1] == '_' {
		out = out[:len(out)-1]
	}
	if len(out) == 0 {
		return "my_line"
	}
	return string(out)
}
