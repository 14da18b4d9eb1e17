package workbook

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/sheet"
)

func TestEveryFormulaOfTheScenariosIsLive(t *testing.T) {
	for _, file := range scenarios(t) {
		t.Run(filepath.Base(file), func(t *testing.T) {
			p := scenario(t, file)
			b := layOut(Input{Plans: []Plan{p}})
			n := 0
			for i, slot := range p.Bound.Slots {
				if slot.Line.Kind == sheet.Formula {
					n++
					assert.NotEmpty(t, b.plans[0].formulas[i], "%s: %s", slot.ID(), b.plans[0].why[i])
					assert.LessOrEqual(t, len(b.plans[0].formulas[i]), 4000, slot.ID())
				}
			}
			require.Positive(t, n)
			if dir := os.Getenv("THAWBOOK_WORKBOOKS"); dir != "" {
				require.NoError(t, os.WriteFile(filepath.Join(dir, filepath.Base(file)+".xlsx"), write(t, Input{Plans: []Plan{p}}), 0o600))
			}
		})
	}
}
