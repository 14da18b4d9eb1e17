package main

import (
	"math"
	"strings"
)

// band is what a strip draws of one line: all in the line's own unit.
type band struct{ p05, p10, p50, p90, p95 float64 }

// strip draws a range in n columns, from nothing (or the 1-in-20 low, when
// that is below nothing) to the 1-in-20 high:
//
//	│·······──━━━━◆━━━━━━───
//
// thick where 8 seasons in 10 fall, thin where 9 in 10 do, a diamond at the
// middle and a bar at nothing. A strip that begins at nothing shows how wide a
// range is beside the number itself. It is empty when a number is missing.
func strip(b band, n int) string {
	low, high := math.Min(0, b.p05), math.Max(0, b.p95)
	if n < 2 || math.IsNaN(low+high+b.p10+b.p50+b.p90) || math.IsInf(high-low, 0) || low == high {
		return ""
	}
	at := func(x float64) int { return int(math.Round((x - low) / (high - low) * float64(n-1))) }
	cells := []rune(strings.Repeat("·", n))
	fill := func(from, to float64, mark rune) {
		for i := at(from); i <= at(to); i++ {
			cells[i] = mark
		}
	}
	fill(b.p05, b.p95, '─')
	fill(b.p10, b.p90, '━')
	cells[at(0)] = '│'
	cells[at(b.p50)] = '◆'
	return string(cells)
}
