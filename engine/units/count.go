package units

// IsCount says whether the dimension is that of one kind of thing, as taps or
// jars are: no base dimension, one count, to the first power.
func (d Dim) IsCount() bool {
	counts := splitCounts(d.counts)
	return d.base == base{} && !d.beyond && len(counts) == 1 && counts[0].exp == 1 && d.counts != yesNoCounts
}
