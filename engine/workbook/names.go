package workbook

import (
	"regexp"
	"strconv"
	"strings"
)

// namer hands out the workbook's defined names. Names are compared without
// regard to case, and ours have none.
type namer struct {
	taken map[string]bool
}

func newNamer() *namer { return &namer{taken: map[string]bool{indexName: true}} }

// maxName is how long a defined name may be; the standard allows 255 characters.
const maxName = 255

// name is a defined name for what the words say, in the plan of that number:
// the words themselves where they may stand, else something near to them.
func (n *namer) name(plan int, words ...string) string {
	base := strings.Join(words, "_")
	if plan > 1 {
		base += "_" + strconv.Itoa(plan)
	}
	if reserved(base) {
		base = "line_" + base
	}
	// Room for a number behind, for ids as long as a sheet allows.
	if len(base) > maxName-8 {
		base = base[:maxName-8]
	}
	out := base
	for k := 2; n.taken[out]; k++ {
		out = base + "_" + strconv.Itoa(k) + "x"
	}
	n.taken[out] = true
	return out
}

var (
	// lettersDigits reads as a cell's address: tap1, and beyond the last column
	// too, because programs differ in how many columns they have.
	lettersDigits = regexp.MustCompile(`^[a-z]{1,4}[0-9]+$`)
	// rowColumn reads as an address by row and column: r, c, r1, c2, r1c2.
	rowColumn = regexp.MustCompile(`^(r[0-9]*)?(c[0-9]*)?$`)
)

// reserved says whether a program would read a name as something else: an
// address, a truth, or a name that the standard or a program keeps for itself.
func reserved(name string) bool {
	if lettersDigits.MatchString(name) || rowColumn.MatchString(name) {
		return true
	}
	switch name {
	case "true", "false", "print_area", "print_titles", "sheet_title", "criteria", "database", "extract",
		"consolidate_area", "recorder", "auto_open", "auto_close", "auto_activate", "auto_deactivate", "data_form":
		return true
	}
	return strings.HasPrefix(name, "_xl")
}
