// Package units gives every number of a sheet its unit: what dimension it has,
// how large one of it is, how it is written and how it is shown.
//
// A unit is a product of terms. A term is a known unit (gal, BTU, h), the
// sheet's money, or a count: any other word, which mixes with no other. The text
//
//	factor {("*" | "·" | "×" | "/" | "per") factor}
//
// is read from left to right and "/" takes the next factor only, so that
// BTU/h/ft² is heat by time by area. A factor is a name with an exponent behind
// it (ft^2, ft², ft2) or a bare 1, as in 1/tap.
//
// Scales are ratios of exact definitions carried to twice the precision of a
// float64 and rounded once, so that 12 in are 1 ft to the last bit. The
// definitions are the international foot and pound of 1959 (0.3048 m,
// 0.45359237 kg), the US gallon of 231 cubic inches, standard gravity of
// 9.80665 m/s² and the International Table BTU of 1055.05585262 J.
//
// Temperatures stand on a scale (°F, °C, K) only when they stand alone; F°, C°
// and K° are differences, and within a product or quotient every temperature is
// one. Money has no exchange rate: a sheet has one currency.
package units
