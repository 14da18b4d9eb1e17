package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestIsCount(t *testing.T) {
	for text, want := range map[string]bool{
		"tap": true, "taps": true, "fire brick": true,
		"gal": false, "day": false, "$": false, "%": false, "1": false, "°F": false, "yes/no": false,
		"tap/tree": false, "gal/tap": false, "tap^2": false, "1/tap": false, "tap*jar": false, "°Bx": false,
	} {
		u, err := Parse(text, "USD")
		require.NoError(t, err, text)
		assert.Equal(t, want, u.Dim().IsCount(), text)
	}
}
