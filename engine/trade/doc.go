// Package trade holds what is known of maple syrup, its fire and its money: one
// small pure function for each equation, one topic a file.
//
// Every function takes and gives plain numbers in the units its comment names.
// Gallons are US gallons of 231 cubic inches, BTU are International Table ones,
// pounds are avoirdupois. Sugar is in °Bx: per cent of sucrose by weight.
//
// Each comment closes with what the function covers, as
//
//	Valid: brix 0 to 85 °Bx, celsius 0 to 100.
//
// and outside of that, or when an argument is NaN, the function returns NaN. An
// argument the line leaves out may be any finite number. Nothing panics, and
// nothing keeps state, so every function may be called from anywhere at once.
package trade

import "math"

// Exact definitions, shared by topics.
const (
	cubicMetresPerGallon = cubicInchesPerGallon * 0.0254 * 0.0254 * 0.0254
	kilogramsPerPound    = 0.45359237
	// gallonWeight turns kg/m³ into lb/gal.
	gallonWeight = cubicMetresPerGallon / kilogramsPerPound

	squareInchesPerSquareFoot = 144.0
	cubicInchesPerGallon      = 231.0
)

// within says whether x lies from low to high. NaN lies nowhere.
func within(x, low, high float64) bool { return x >= low && x <= high }

// measurable says whether x can be the size of something: a finite number, 0 or more.
func measurable(x float64) bool { return within(x, 0, math.MaxFloat64) }

func toCelsius(fahrenheit float64) float64 { return (fahrenheit - 32) * 5 / 9 }
