package engine

import (
	"thawbook/engine/columns"
	"thawbook/engine/outcome"
)

// run is a book's seasons, drawn and worked, with the summaries asked of them so
// far. It is what one question leaves behind for the next.
type run struct {
	result    *columns.Result
	summaries map[*columns.Column]outcome.Summary
	twenties  map[*columns.Column][]float64
	scratch   []float64
}

// run works the book's columns for the seasons, taking over from its last run
// whatever still holds. s.N is at most columns.MostKept.
func (b *Book) run(s columns.Seasons, progress func(done, total int) bool) (*run, error) {
	var before *columns.Result
	last := &run{}
	if b.last != nil {
		last = b.last
		before = last.result
	}
	result, err := columns.Lower(b.plan).Run(s, before, progress)
	if err != nil {
		return nil, err
	}
	next := &run{result: result, summaries: map[*columns.Column]outcome.Summary{}, twenties: map[*columns.Column][]float64{}, scratch: make([]float64, s.N)}
	for _, c := range result.Columns {
		if summary, ok := last.summaries[c]; ok && c != nil {
			next.summaries[c] = summary
		}
		if dots, ok := last.twenties[c]; ok && c != nil {
			next.twenties[c] = dots
		}
	}
	b.last = next
	return next, nil
}

// summary sums a column up, once.
func (r *run) summary(c *columns.Column) outcome.Summary {
	if s, ok := r.summaries[c]; ok {
		return s
	}
	var s outcome.Summary
	if c.Steady {
		s = outcome.Steady(c.Value, len(r.scratch))
	} else {
		s = outcome.Summarise(c.Values, r.scratch)
	}
	r.summaries[c] = s
	return s
}

// dots are twenty seasons that stand for a column's, once. A column that comes to
// no number in any season has none.
func (r *run) dots(c *columns.Column) []float64 {
	if dots, ok := r.twenties[c]; ok {
		return dots
	}
	values := c.Values
	if c.Steady {
		values = []float64{c.Value}
	}
	dots := outcome.Twenty(values, r.scratch)
	r.twenties[c] = dots
	return dots
}

// at is the column of a line or cell; nil when it is not there or cannot be
// reckoned.
func (r *run) at(id string) *columns.Column {
	if i := r.result.Plan.Find(id); i >= 0 {
		return r.result.Columns[i]
	}
	return nil
}
