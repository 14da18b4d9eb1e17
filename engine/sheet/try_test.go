package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
)

func TestTryLeavesTheSheetAlone(t *testing.T) {
	s := resolved(t, full)
	tried, refused := Try(s, []Edit{
		{About: "taps", Set: Set{Guess: guess(100, 120, 150)}},
		{About: "taps", Set: Set{Is: number(130)}},
		{About: "fuels.propane.heat", Set: Set{Records: []float64{1, 2}}},
		{About: "fuel", Set: Set{Choose: text("pallets")}},
	})
	require.Empty(t, refused)
	assert.Equal(t, []any{Is, 130.0}, []any{tried.Find("taps").Kind, tried.Find("taps").Is})
	assert.Same(t, tried.Find("fuels.propane.heat"), tried.Table("fuels").Rows[1].Cells[0])
	assert.Equal(t, []float64{1, 2}, tried.Find("fuels.propane.heat").Records)
	assert.Equal(t, "pallets", tried.Find("fuel").Choose)
	assert.Same(t, s.Find("sap"), tried.Find("sap"))
	assert.Equal(t, 140.0, s.Find("taps").Is)
	assert.Equal(t, "propane", s.Find("fuel").Choose)
	assert.Equal(t, Is, s.Table("fuels").Rows[1].Cells[0].Kind)
}

func TestTryIsRefused(t *testing.T) {
	s := resolved(t, full)
	for name, tt := range map[string]struct {
		edit Edit
		code diag.Code
	}{
		"no such line": {Edit{About: "tabs", Set: Set{Is: number(1)}}, diag.EditUnknown},
		"a choice":     {Edit{About: "fuel", Set: Set{Is: number(1)}}, diag.WrongKind},
		"no choice":    {Edit{About: "taps", Set: Set{Choose: text("wood")}}, diag.WrongKind},
		"no such name": {Edit{About: "fuel", Set: Set{Choose: text("coal")}}, diag.UnknownChoice},
		"above":        {Edit{About: "sap_per_tap", Set: Set{Is: number(31)}}, diag.OutOfBounds},
		"one record":   {Edit{About: "taps", Set: Set{Records: []float64{1}}}, diag.RecordsFew},
		"a new line":   {Edit{About: "new", Add: &Add{Chapter: "A"}, Set: Set{Is: number(1)}}, diag.EditUnknown},
		"one less":     {Edit{About: "taps", Remove: true}, diag.EditUnknown},
	} {
		tried, refused := Try(s, []Edit{tt.edit})
		assert.Nil(t, tried, name)
		require.Len(t, refused, 1, name)
		assert.Equal(t, tt.code, refused[0].Code, name)
	}
}
