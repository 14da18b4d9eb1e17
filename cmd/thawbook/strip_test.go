package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestStrip(t *testing.T) {
	for name, test := range map[string]struct {
		band band
		n    int
		want string
	}{
		"above nothing":    {band{p05: 10, p10: 12, p50: 15, p90: 18, p95: 20}, 21, "│·········──━━━◆━━━──"},
		"below nothing":    {band{p05: -20, p10: -18, p50: -15, p90: -12, p95: -10}, 21, "──━━━◆━━━──·········│"},
		"across nothing":   {band{p05: -10, p10: -8, p50: 2, p90: 8, p95: 10}, 21, "──━━━━━━━━│━◆━━━━━━──"},
		"middle at zero":   {band{p05: -10, p10: -5, p50: 0, p90: 5, p95: 10}, 21, "─────━━━━━◆━━━━━─────"},
		"the same always":  {band{p05: 4, p10: 4, p50: 4, p90: 4, p95: 4}, 5, "│···◆"},
		"nothing always":   {band{}, 5, ""},
		"no number":        {band{p05: 1, p10: 2, p50: math.NaN(), p90: 3, p95: 4}, 5, ""},
		"endless":          {band{p05: 1, p10: 2, p50: 3, p90: 4, p95: math.Inf(1)}, 5, ""},
		"beyond all range": {band{p05: -math.MaxFloat64, p50: 0, p95: math.MaxFloat64}, 5, ""},
		"no room":          {band{p05: 1, p10: 2, p50: 3, p90: 4, p95: 5}, 1, ""},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, test.want, strip(test.band, test.n))
		})
	}
}
