package draw

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestUnfitGuessesSayWhatToMove(t *testing.T) {
	cases := []struct {
		low, likely, high float64
		floor, ceiling    *float64
		reason            Reason
		text              string
	}{
		{5, 5.2, 14, nil, nil, Form, "likely 5.2 is too near low 5 for a high of 14 (move likely to 6.5)"},
		{5, 13.9, 14, nil, nil, Form, "likely 13.9 is too near high 14 for a low of 5 (move likely to 12.5)"},
		{5, 5, 14, nil, nil, Form, "low and likely are both 5 while high is 14 (move likely to 6.5)"},
		{5, 14, 14, nil, nil, Form, "likely and high are both 14 while low is 5 (move likely to 12.5)"},
		{5, 5.2, 14, at(0), nil, Form, "likely 5.2 is too near low 5 for a high of 14 (move likely to 6)"},
		{0.1, 0.9, 0.91, at(0), at(1), Form, "likely 0.9 is too near high 0.91 for a low of 0.1 (move high to 0.956)"},
		{5, 4, 14, nil, nil, Order, "likely 4 is below low 5 (move likely to 6.5)"},
		{5, 15, 14, nil, nil, Order, "likely 15 is above high 14 (move likely to 12.5)"},
		{14, 5, 9, nil, nil, Order, "low 14 is above high 9 (move low to 4)"},
		{14, 9, 5, nil, nil, Order, "low 14 is above high 5 (in order they are low 5, likely 9, high 14)"},
		{0, 9, 14, at(0), nil, Bounds, "low 0 is not above the floor 0 (move low to 1)"},
		{5, 9, 20, nil, at(20), Bounds, "high 20 is not below the ceiling 20 (move high to 17.6)"},
		{-3, -2, 14, at(0), nil, Bounds, "low -3 is not above the floor 0 (more than one number has to move, or the bound does)"},
		{5, 9, 14, at(3), at(2), Bounds, "floor 3 is not below ceiling 2 (lower the floor or raise the ceiling)"},
		{5, math.NaN(), 14, nil, nil, NotFinite, "likely is NaN, wanted a number"},
		{5, 9, math.Inf(1), nil, nil, NotFinite, "high is +Inf, wanted a number"},
		{5, 9, 14, at(math.NaN()), nil, NotFinite, "floor is NaN, wanted a number"},
	}
	for _, c := range cases {
		shape, err := Metalog(c.low, c.likely, c.high, c.floor, c.ceiling)
		var u *Unfit
		require.ErrorAs(t, err, &u, c.text)
		assert.Nil(t, shape)
		assert.Equal(t, c.text, u.Error())
		assert.Equal(t, c.reason, u.Reason)
		assert.Equal(t, u.Which == "", math.IsNaN(u.Move), "Move without Which or the other way round")
	}
}

// FuzzMetalog holds that every guess is either carried, or answered with one
// move after which it is, or with none at all.
func FuzzMetalog(f *testing.F) {
	f.Add(5.0, 9.0, 14.0, 0.0, 20.0, byte(0))
	f.Add(5.0, 5.1, 14.0, 0.0, 20.0, byte(1))
	f.Add(-3.0, -2.0, 14.0, 0.0, 20.0, byte(2))
	f.Add(0.1, 0.99, 0.995, 0.0, 1.0, byte(3))
	f.Add(1e-3, 2e-3, 1e6, 0.0, 1e9, byte(3))
	f.Fuzz(func(t *testing.T, low, likely, high, floor, ceiling float64, which byte) {
		var b bounds
		if which&1 != 0 {
			b.floor = &floor
		}
		if which&2 != 0 {
			b.ceiling = &ceiling
		}
		for _, x := range []float64{low, likely, high, floor, ceiling} {
			if size := math.Abs(x); size > 1e12 || size > 0 && size < 1e-9 {
				t.Skip("no guess of a season")
			}
		}
		shape, err := Metalog(low, likely, high, b.floor, b.ceiling)
		var u *Unfit
		if errors.As(err, &u) && u.Which != "" {
			switch u.Which {
			case "low":
				low = u.Move
			case "likely":
				likely = u.Move
			case "high":
				high = u.Move
			}
			shape, err = Metalog(low, likely, high, b.floor, b.ceiling)
			require.NoError(t, err, "after moving %s to %v", u.Which, u.Move)
		}
		if err != nil {
			return
		}
		slack := 1e-9 * (math.Abs(low) + math.Abs(high) + math.Abs(floor) + math.Abs(ceiling))
		require.InDelta(t, low, shape.Quantile(0.1), slack)
		require.InDelta(t, likely, shape.Quantile(0.5), slack)
		require.InDelta(t, high, shape.Quantile(0.9), slack)
		require.GreaterOrEqual(t, shape.Quantile(0.99), shape.Quantile(0.95))
		require.LessOrEqual(t, shape.Quantile(0.01), shape.Quantile(0.05))
	})
}
