package trade

import "math"

const (
	mostYears = 1000
	mostRate  = 10 // 1,000 % a year
)

// YearlyShare is what a thing costs in each year of its life, the money tied up
// in it counted: price is what it cost, years how long it lasts, rate what money
// costs a year as a share (0.05 for 5 %), leftOver the share of the price that it
// still fetches at the end. In the price's unit.
//
// Source: capital recovery with salvage, engineering economy:
// (P − S) i (1 + i)ⁿ / ((1 + i)ⁿ − 1) + S i, and (P − S)/n when i is 0.
//
// Valid: years above 0 to 1000, rate 0 to 10, leftOver 0 to 1.
func YearlyShare(price, years, rate, leftOver float64) float64 {
	if years == 0 || !within(leftOver, 0, 1) {
		return math.NaN()
	}
	left := price * leftOver
	return (price-left)/annuity(years, rate) + left*rate
}

// WorthNow is what a sum at the end of each of so many years is worth today, at
// a yearly rate given as a share (0.05 for 5 %). In the sum's unit. The years need
// not be whole.
//
// Source: present worth of an annuity, engineering economy:
// A (1 − (1 + i)⁻ⁿ) / i, and A n when i is 0.
//
// Valid: years 0 to 1000, rate 0 to 10.
func WorthNow(yearly, years, rate float64) float64 {
	return yearly * annuity(years, rate)
}

// YearsToRepay is after how many years a saving at the end of each year has paid
// back a price, with money costing rate a year as a share. It is 0 when there is
// nothing to repay (a price of 0 or less) and +Inf when it never is: nothing is
// saved, or the saving does not even cover the first year's rate. +Inf and not
// NaN, because "never" is an answer and counts as longer than any number of years.
//
// Source: [WorthNow] solved for the years: −ln(1 − P i / A) / ln(1 + i), and P/A
// when i is 0.
//
// Valid: rate 0 to 10.
func YearsToRepay(price, yearlySaving, rate float64) float64 {
	switch {
	case !within(rate, 0, mostRate) || math.IsNaN(price) || math.IsNaN(yearlySaving):
		return math.NaN()
	case price <= 0:
		return 0
	case yearlySaving <= 0 || price*rate >= yearlySaving:
		return math.Inf(1)
	case rate == 0:
		return price / yearlySaving
	}
	return -math.Log1p(-price*rate/yearlySaving) / math.Log1p(rate)
}

// annuity is the worth now of 1 at the end of each year, NaN outside the range.
// Expm1 and Log1p keep it exact for the smallest rates, where the printed form
// takes one nearly equal number from another.
func annuity(years, rate float64) float64 {
	if !within(years, 0, mostYears) || !within(rate, 0, mostRate) {
		return math.NaN()
	}
	if rate == 0 {
		return years
	}
	return -math.Expm1(-years*math.Log1p(rate)) / rate
}
