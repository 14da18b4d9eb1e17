package outcome_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
)

func TestLikelyBut(t *testing.T) {
	guess := func(id string, low, likely, high float64) *sheet.Line {
		return &sheet.Line{ID: id, Unit: "1", Kind: sheet.Guess, Low: low, Likely: likely, High: high}
	}
	work := func(id, text string) *sheet.Line {
		return &sheet.Line{ID: id, Unit: "1", Kind: sheet.Formula, Formula: text}
	}
	plan, list := formula.Bind(&sheet.Sheet{Money: "USD", Chapters: []sheet.Chapter{{Title: "all", Lines: []*sheet.Line{
		guess("sap", 5, 9, 14), guess("sugar", 1.6, 2, 2.5), guess("price", 40, 50, 70),
		work("syrup", "let x = sap * sugar; x / 86"), work("income", "syrup * price"), work("beside", "price * 2"),
	}}}})
	require.Empty(t, list)
	likely := outcome.AtLikely(plan)
	before := append([]float64{}, likely...)
	at := func(but map[int]float64, id string) float64 {
		return outcome.LikelyBut(plan, likely, but, plan.Find(id))
	}

	assert.InEpsilon(t, 9*2/86.0*50, at(nil, "income"), 1e-12)
	assert.InEpsilon(t, 5*2/86.0*50, at(map[int]float64{0: 5}, "income"), 1e-12)
	assert.InEpsilon(t, 14*2.5/86.0*50, at(map[int]float64{0: 14, 1: 2.5}, "income"), 1e-12, "two at once")
	assert.InEpsilon(t, 100, at(map[int]float64{0: 5}, "beside"), 1e-12, "does not hang on the sap")
	assert.InEpsilon(t, 3*50, at(map[int]float64{plan.Find("syrup"): 3}, "income"), 1e-12, "a formula held at a number")
	assert.Equal(t, before, likely, "the likely numbers are only read")
}
