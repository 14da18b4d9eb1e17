package engine

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestWorkedReadsAsWritten: a formula with its numbers in place keeps its
// author's brackets where they matter and no others.
func TestWorkedReadsAsWritten(t *testing.T) {
	const sheet = `thawbook: 1
chapters:
  - title: All
    lines:
      - {id: a, label: A, is: 2, unit: 1}
      - {id: b, label: B, is: -3, unit: 1}
      - {id: jug, label: A jug, is: 4, unit: qt/jug}
      - {id: vat, label: The vat, is: 5, unit: gal}
      - {id: warm, label: Warm, is: 20, unit: °C}
      - {id: share, label: Share, is: 10, unit: "%%"}
      - {id: way, label: Way, choose: flat, among: [flat, edge]}
      - {id: x, label: X, formula: '%s', unit: '%s'}
    tables:
      - id: t
        label: T
        columns: [{id: at, label: At, unit: 1}, {id: high, label: High, unit: gal}]
        rows:
          - {id: one, label: One, at: 1, high: 10}
          - {id: two, label: Two, at: 3, high: 30}
`
	for _, test := range []struct{ formula, unit, worked string }{
		{`a + b`, "1", "2 + (-3)"},
		{`(a + b) * a`, "1", "(2 + (-3)) × 2"},
		{`a - (b - a)`, "1", "2 − ((-3) − 2)"},
		{`a - b - a`, "1", "2 − (-3) − 2"},
		{`a / (a / 4)`, "1", "2 ÷ (2 ÷ 4)"},
		{`a * a ^ 2`, "1", "2 × 2 ^ 2"},
		{`(a * a) ^ 2`, "1", "(2 × 2) ^ 2"},
		{`-(a + 1)`, "1", "−(2 + 1)"},
		{`vat / jug`, "jug", "5 gal ÷ 4 qt/jug"},
		{`vat + of(1, "qt")`, "gal", "5 gal + (1 qt = 0.25 gal)"},
		{`vat * share`, "gal", "5 gal × 10 %"},
		{`vat * share + vat`, "gal", "5 gal × 10 % + 5 gal"},
		{`max(vat, of(9, "gal"))`, "gal", "max(5 gal, 9 gal)"},
		{`number(warm, "°F") + 1`, "1", "(20.0 °C = 68) + 1"},
		{`of(share, "gal") + vat`, "gal", "(10 % = 0.1 gal) + 5 gal"},
		{`draw_off_at(of(66, "°Bx"), of(0, "ft")) - water_boils_at(of(0, "ft"))`, "F°",
			"draw_off_at(66 °Bx, 0 ft) − water_boils_at(0 ft)"},
		{`sum(t.high)`, "gal", "10 gal + 30 gal"},
		{`mean(t.high)`, "gal", "(10 gal + 30 gal) ÷ 2"},
		{`between(a, t.at, t.high)`, "gal", "between(2, [1, 3], [10 gal, 30 gal])"},
		{`t.two.high - t.one.high`, "gal", "30 gal − 10 gal"},
		{`let y = a * 3; y + y`, "1", "with y = 2 × 3 = 6: 6 + 6"},
		{`way == "edge" ? a : b`, "1", "-3"},
		{`a > 1 and b > 1`, "yes/no", "2 > 1 and (-3) > 1"},
		{`a > 3 and b > 1`, "yes/no", "2 > 3"},
		{`not (a > 1 or b > 1)`, "yes/no", "not (2 > 1)"},
		{`bricks_for(of(9, "ft²"), way)`, "brick", `bricks_for(9 ft², "flat")`},
		{`bricks_for(of(9, "ft²"), "edge")`, "brick", `bricks_for(9 ft², "edge")`},
		{`jars_filled(vat, jug, 0)`, "jug", "jars_filled(5 gal, (4 qt/jug = 1 gal/jug), 0)"},
	} {
		book := openText(t, fmt.Sprintf(sheet, test.formula, test.unit))
		assert.Equal(t, test.worked, explained(t, book, "x", ExplainOptions{}).Tree.Worked, test.formula)
	}
}

func TestWorkedNamesEachSourceOnce(t *testing.T) {
	book := openText(t, `thawbook: 1
chapters:
  - title: All
    lines:
      - {id: a, label: A, formula: 'water_boils_at(of(0, "ft"))', unit: °F}
      - {id: b, label: B, formula: 'water_boils_at(of(500, "ft")) - a', unit: F°}
`)
	b := explained(t, book, "b", ExplainOptions{}).Tree
	require.Len(t, b.Functions, 1)
	assert.Equal(t, "water_boils_at", b.Functions[0].Name)
	assert.NotEmpty(t, b.Functions[0].Source)
	assert.Empty(t, b.Uses[0].Functions)
}

func TestConversionWords(t *testing.T) {
	book := openText(t, `thawbook: 1
chapters:
  - title: All
    lines:
      - {id: warm, label: Warm, is: 20, unit: °C}
      - {id: in_f, label: In F, formula: warm, unit: °F}
      - {id: in_c, label: In C, formula: in_f, unit: °C}
      - {id: heat, label: Heat, is: 2, unit: MMBTU}
      - {id: small, label: Small, formula: heat, unit: BTU}
      - {id: part, label: Part, formula: 'of(1, "qt") / of(1, "gal")', unit: 1}
`)
	for id, want := range map[string]string{"in_f": "°C to °F: × 1.8 + 32", "in_c": "°F to °C: × 0.5555556 − 17.77778",
		"small": "MMBTU to BTU: × 1000000", "part": "qt/gal to a bare number: × 0.25"} {
		conversions := explained(t, book, id, ExplainOptions{}).Tree.Conversions
		require.Len(t, conversions, 1, id)
		assert.Equal(t, want, conversions[0].Shown)
	}
}
