package columns

// InputsOnly is r without the columns that formulas worked, so that a run after
// it works every formula and draws nothing.
func (r *Result) InputsOnly() *Result {
	out := *r
	out.byStamp = map[stamp]*Column{}
	for i, c := range r.Columns {
		if c != nil && r.Plan.Slots[i].Expr == nil {
			out.byStamp[c.stamp] = c
		}
	}
	return &out
}
