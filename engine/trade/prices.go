package trade

import (
	"math"
	"slices"
)

// Prices that others got, for reference beside one's own and never as advice.
// They are in US dollars of their own year; what syrup brings today they do not say.
//
// Source: US Department of Agriculture, National Agricultural Statistics Service,
// annual maple syrup survey (public domain). The survey asked for prices by
// container and outlet in 2015 to 2017 only.

// SurveyYear is the year of the prices by container.
const SurveyYear = 2017

// SurveySource names where the prices are published.
const SurveySource = "USDA NASS, annual maple syrup survey"

// Container is a size the survey asked about.
type Container struct {
	// Name is what a sentence calls it: "half gallon".
	Name string
	// FluidOunces is what it holds, in US fluid ounces.
	FluidOunces float64
}

// Containers are the survey's sizes, the largest first.
func Containers() [5]Container {
	return [5]Container{{"gallon", 128}, {"half gallon", 64}, {"quart", 32}, {"pint", 16}, {"half pint", 8}}
}

// Holds says whether a size is this container: it holds as many fluid ounces, to 2
// in a hundred. NaN is no container.
func (c Container) Holds(fluidOunces float64) bool {
	return math.Abs(fluidOunces/c.FluidOunces-1) <= 0.02
}

// StatePrices are the prices of one state in SurveyYear, in dollars.
type StatePrices struct {
	State string
	// Retail and Wholesale are for each of Containers, 0 where none was published.
	Retail, Wholesale [5]float64
	// AllSales is for a gallon over all that was sold, bulk and all.
	AllSales float64
}

// PricesByState are the states of the survey, by name.
func PricesByState() []StatePrices {
	return []StatePrices{
		{"Connecticut", [5]float64{51.6, 32.4, 20.1, 11.9, 7.3}, [5]float64{0, 0, 15.1, 8.5, 5}, 62.2},
		{"Indiana", [5]float64{40.7, 23.2, 14.1, 9.1, 5.7}, [5]float64{42.7, 0, 11, 0, 0}, 50.2},
		{"Maine", [5]float64{54.1, 31.1, 17.4, 10.4, 6.1}, [5]float64{48.4, 24.1, 13.2, 7.9, 5.2}, 33.7},
		{"Massachusetts", [5]float64{48.9, 31, 19.3, 11.4, 7.2}, [5]float64{44.2, 24.9, 15.1, 8.4, 5.45}, 50.2},
		{"Michigan", [5]float64{47, 26.7, 15.2, 9.3, 6.9}, [5]float64{43, 23.4, 12.9, 7.8, 5.1}, 51.2},
		{"Minnesota", [5]float64{58.6, 30.5, 16.3, 9, 7.4}, [5]float64{46.9, 0, 0, 0, 0}, 66.6},
		{"New Hampshire", [5]float64{53.3, 30.3, 18.4, 10.6, 6}, [5]float64{44.9, 21.8, 12.8, 7.7, 4.8}, 43.5},
		{"New York", [5]float64{46.9, 27.5, 17.2, 10.7, 7.8}, [5]float64{46, 25, 14.1, 9.2, 6.6}, 39},
		{"Ohio", [5]float64{40.6, 24, 13.8, 9, 6.1}, [5]float64{39.5, 22.5, 14.3, 7.7, 6.1}, 38.5},
		{"Pennsylvania", [5]float64{41.4, 24.7, 14.2, 8.2, 5.1}, [5]float64{29.7, 21.9, 13.7, 7.6, 4.7}, 34.3},
		{"Vermont", [5]float64{44.8, 26.6, 16.1, 9.9, 5.9}, [5]float64{40.1, 22.2, 12.9, 7.4, 4.4}, 27},
		{"West Virginia", [5]float64{44.4, 27.4, 16.4, 8.8, 5.6}, [5]float64{50, 26.2, 16.7, 8.5, 5.4}, 36.7},
		{"Wisconsin", [5]float64{44.8, 23.9, 13.6, 7.8, 5.8}, [5]float64{39.4, 23, 11.1, 6.5, 4.1}, 31.4},
	}
}

// YearPrice is what a gallon brought over all US sales of a year, in dollars.
type YearPrice struct {
	Year      int
	PerGallon float64
}

// PricesByYear is the national price of all sales, bulk and all, the oldest
// year first.
func PricesByYear() []YearPrice {
	var out []YearPrice
	for i, price := range []float64{
		23.8, 23.3, 24.4, 26.2, 26.9, 27.1, 28, 27.7, 27.5, 28.5,
		27.5, 28.2, 28.4, 29.7, 31, 32.8, 40.7, 37.9, 37.4, 37.8,
		38.6, 37.4, 36.4, 36.7, 35, 33,
	} {
		out = append(out, YearPrice{1992 + i, price})
	}
	return out
}

// PriceSpread is what the states of the survey got for one size.
type PriceSpread struct {
	// States counts them; with none the prices are NaN.
	States            int
	Low, Median, High float64
}

// RetailPrices sums up what buyers paid in the states for one of Containers, by its
// place.
func RetailPrices(container int) PriceSpread {
	return spread(func(s StatePrices) float64 { return s.Retail[container] })
}

// WholesalePrices is RetailPrices for what shops and packers paid.
func WholesalePrices(container int) PriceSpread {
	return spread(func(s StatePrices) float64 { return s.Wholesale[container] })
}

func spread(of func(StatePrices) float64) PriceSpread {
	var prices []float64
	for _, s := range PricesByState() {
		if price := of(s); price > 0 {
			prices = append(prices, price)
		}
	}
	n := len(prices)
	if n == 0 {
		return PriceSpread{0, math.NaN(), math.NaN(), math.NaN()}
	}
	slices.Sort(prices)
	return PriceSpread{n, prices[0], (prices[(n-1)/2] + prices[n/2]) / 2, prices[n-1]}
}
