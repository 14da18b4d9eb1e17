package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/engine/sheet"
)

func viewWithChoice() engine.View {
	return engine.View{Chapters: []engine.ChapterView{{Lines: []engine.LineView{{ID: "fuel", Kind: "choose"}, {ID: "taps", Kind: "is"}}}}}
}

func TestReadChange(t *testing.T) {
	number := func(x float64) *float64 { return &x }
	text := func(s string) *string { return &s }
	for change, want := range map[string]sheet.Edit{
		"taps=150":               {About: "taps", Set: sheet.Set{Is: number(150)}},
		"taps = -1.5e3":          {About: "taps", Set: sheet.Set{Is: number(-1500)}},
		"sap_per_tap=5/9/14":     {About: "sap_per_tap", Set: sheet.Set{Guess: &sheet.GuessValue{Low: 5, Likely: 9, High: 14}}},
		"fuel=propane":           {About: "fuel", Set: sheet.Set{Choose: text("propane")}},
		"taps=maples * 2":        {About: "taps", Set: sheet.Set{Formula: text("maples * 2")}},
		"taps=5/9":               {About: "taps", Set: sheet.Set{Formula: text("5/9")}},
		"taps=fuel == \"wood\"":  {About: "taps", Set: sheet.Set{Formula: text(`fuel == "wood"`)}},
		"taps=nan":               {About: "taps", Set: sheet.Set{Formula: text("nan")}},
		"taps=1e999":             {About: "taps", Set: sheet.Set{Formula: text("1e999")}},
		"fuels.propane.price=3":  {About: "fuels.propane.price", Set: sheet.Set{Is: number(3)}},
		"fuels.propane.price=a/": {About: "fuels.propane.price", Set: sheet.Set{Formula: text("a/")}},
	} {
		t.Run(change, func(t *testing.T) {
			got, err := readChange(change, viewWithChoice())
			require.NoError(t, err)
			assert.Equal(t, want, got)
		})
	}
}

func TestReadChangeRefuses(t *testing.T) {
	for _, change := range []string{"", "taps", "taps=", "=150", " = "} {
		_, err := readChange(change, viewWithChoice())
		var f failure
		require.ErrorAs(t, err, &f, change)
		assert.Equal(t, statusCommandWrong, f.status)
		assert.Contains(t, f.hint, "--change taps=150")
	}
}
