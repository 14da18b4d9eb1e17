package engine

import (
	"fmt"

	"thawbook/engine/diag"
)

// Column is the number a line came to in each season of the last Reckon, in the
// line's own unit. The slice is the caller's. The error is a diag.Diagnostic for
// a line that is not there or cannot be reckoned, or when nothing was reckoned
// yet, or more seasons than are kept.
func (b *Book) Column(id string) ([]float64, error) {
	i := b.plan.Find(id)
	switch {
	case i < 0:
		return nil, diag.Diagnostic{Code: diag.UnknownName, Severity: diag.Error, Message: fmt.Sprintf("no line is called %q", id)}
	case b.last == nil || b.last.result.Plan != b.plan:
		return nil, diag.Diagnostic{Code: diag.UnknownName, Severity: diag.Error, Message: "no seasons are kept", Hint: "reckon first, with at most 100,000 seasons"}
	case b.last.result.Columns[i] == nil:
		return nil, diag.Diagnostic{Code: diag.WaitsFor, Severity: diag.Error, About: id, Message: fmt.Sprintf("%q cannot be reckoned", id)}
	}
	out := make([]float64, b.last.result.Seasons.N)
	b.last.result.Columns[i].Fill(out, 0)
	return out, nil
}
