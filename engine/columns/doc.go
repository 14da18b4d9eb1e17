// Package columns runs a bound sheet over all its seasons at once.
//
// Lower turns each formula's tree into a short list of steps over columns; Run
// works the columns in stretches small enough to stay in the processor's cache,
// and takes over from an earlier run every column whose inputs did not change.
// Stream does the same without keeping columns, for very long runs.
package columns

// Chunk is how many seasons are worked at a time: a few columns of this length
// stay in the first-level cache.
const Chunk = 1024
