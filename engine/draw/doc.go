// Package draw turns guesses and records into drawn seasons.
//
// A Stream gives one guess its points: for each of n seasons a number strictly
// between 0 and 1, one in each n-th of that interval (a Latin hypercube). A
// Shape turns a point into a value through its quantile function. Together
// reorders one guess's points so that it moves with others.
//
// Points depend on the sheet's seed and the guess's id alone and are made with
// integer arithmetic and one division, so that they are the same bits on every
// machine. Values pass through logarithms and exponentials, which differ in
// their last places between processors.
package draw
