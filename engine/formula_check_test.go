package engine

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
	"thawbook/engine/units"
)

func TestCheckFormulaAsTyped(t *testing.T) {
	book := openText(t, smallSheet)
	for _, c := range []struct {
		about, text, comes, likely string
		code                       diag.Code
	}{
		{"sap", "taps * each", "gal", "90 gal", ""},
		{"sap", "taps * each * 2", "gal", "180 gal", ""},
		{"sap", "taps *", "", "", diag.FormulaSyntax},
		{"sap", "taps * eech", "", "", diag.UnknownName},
		{"sap", "taps + each", "", "", diag.UnitMismatch},
		{"sap", "taps", "tap", "", diag.WrongUnit},
		{"sap", "sap * 2", "gal", "", diag.Circle},
		{"sap", "cost / fuels.wood.price", "gal", "", diag.Circle},
		{"sap", "number(taps, `tap`) > 3", "yes/no", "", diag.WrongUnit},
		{"sap", "fuel", "", "", diag.NotANumber},
		{"fuels.gas.price", "2 * fuels.wood.price", "$/gal", "$1.00/gal", ""},
		{"fuels.gas.price", "price", "$/gal", "", diag.Circle},
		{"new", "let x = taps * 3; x / 2", "tap", "15 taps", ""},
		{"new", "number(taps, `tap`) > 3", "yes/no", "yes", ""},
		{"new", "1 / (taps - taps)", "1/tap", "", ""},
		{"new", "2 + 2", "1", "4", ""},
	} {
		r := book.CheckFormula(c.about, c.text, units.AsWritten)
		assert.Equal(t, c.likely, r.Likely, c.text)
		if c.code == "" {
			assert.Equal(t, c.comes, r.ComesTo, c.text)
			assert.Empty(t, r.Diagnostics, c.text)
			continue
		}
		require.NotEmpty(t, r.Diagnostics, c.text)
		d := r.Diagnostics[0]
		assert.Equal(t, []any{c.code, c.about, c.comes}, []any{d.Code, d.About, r.ComesTo}, "%s: %s", c.text, d.Message)
		require.NotNil(t, d.Place.Formula, c.text)
		assert.LessOrEqual(t, d.Place.Formula.To, len([]rune(c.text))+1, c.text)
		assert.NotEmpty(t, d.Hint, c.text)
	}
	assert.Equal(t, smallSheet, string(book.Source()))
	assert.Equal(t, "341 L", book.CheckFormula("sap", "taps * each", units.Metric).Likely)
}

// What is said of a formula in the making is what is said once it stands there.
func TestCheckFormulaAgreesWithTheSheet(t *testing.T) {
	book := openShipped(t, "heron-ridge-pallets.yaml")
	for _, slot := range book.plan.Slots {
		if slot.Expr == nil {
			continue
		}
		r := book.CheckFormula(slot.ID(), slot.Line.Formula, units.AsWritten)
		assert.Empty(t, r.Diagnostics, slot.ID())
		assert.NotEmpty(t, r.ComesTo, slot.ID())
	}
}
