package diag

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAPlaceLeavesOutWhatItLacks(t *testing.T) {
	assert.Equal(t, "a.yaml:3:7", Place{File: "a.yaml", Line: 3, Column: 7}.String())
	assert.Equal(t, "a.yaml:3", Place{File: "a.yaml", Line: 3}.String())
	assert.Equal(t, "a.yaml", Place{File: "a.yaml", Column: 7}.String())
	assert.Empty(t, Place{}.String())
}

func TestADiagnosticIsAnError(t *testing.T) {
	d := Diagnostic{Place: Place{File: "a.yaml", Line: 3}, Message: `nothing is called "sapp"`, Hint: `did you mean "sap"?`}
	assert.EqualError(t, d, `a.yaml:3: nothing is called "sapp" (did you mean "sap"?)`)
	assert.EqualError(t, Diagnostic{Message: "so few seasons"}, "so few seasons")
}

func TestSortGoesByPlaceAndThenByWhatIsSaid(t *testing.T) {
	at := func(file string, line, column int, span *Span, code Code) Diagnostic {
		return Diagnostic{Place: Place{File: file, Line: line, Column: column, Formula: span}, Code: code}
	}
	want := List{
		at("a", 1, 1, nil, Circle), at("a", 2, 1, nil, Circle), at("a", 2, 4, nil, Circle),
		at("a", 2, 4, &Span{From: 0, To: 1}, Circle), at("a", 2, 4, &Span{From: 3, To: 4}, BadID),
		at("a", 2, 4, &Span{From: 3, To: 4}, Circle), at("b", 1, 1, nil, Circle),
	}
	got := List{want[6], want[3], want[5], want[0], want[4], want[2], want[1]}
	got.Sort()
	assert.Equal(t, want, got)
}

func TestErrorsLeavesOutWarnings(t *testing.T) {
	assert.Equal(t, 1, List{{Severity: Error}, {Severity: Warning}}.Errors())
}

func TestNearest(t *testing.T) {
	names := []string{"sap", "syrup", "sap_sugar", "taps"}
	for word, want := range map[string]string{
		"sapp":      `did you mean "sap"?`,
		"spa":       `did you mean "sap"?`, // neighbours swapped count as one
		"sap_suger": `did you mean "sap_sugar"?`,
		"propane":   "there are sap, sap_sugar, syrup, taps",
	} {
		assert.Equal(t, want, Nearest(word, names), word)
	}
	assert.Empty(t, Nearest("sap", nil))
	assert.Empty(t, Nearest(strings.Repeat("sap", 1000), names), "a word of the length of a file is not measured")
	assert.Equal(t, []string{"sap", "syrup", "sap_sugar", "taps"}, names, "the candidates keep their order")
}
