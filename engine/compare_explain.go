package engine

import (
	"math"
	"slices"

	"thawbook/engine/outcome"
)

// breakdown is how much of one outcome's mean difference each change makes.
type breakdown struct {
	difference outcome.Difference
	effects    []effect
	together   float64 // NaN when there is no mean to explain
}

// effect is what one change, applied alone to the first scenario, moves.
type effect struct {
	about, label string
	mean         float64
}

// explain tries every change of book k alone on the first, in the order of the
// file, and at last as one what cannot be tried alone.
func (c *comparing) explain(k int) error {
	found := map[*beside]*breakdown{}
	for _, o := range c.outcomes {
		found[o] = &breakdown{difference: outcome.Differ(o.values[0], o.values[k], c.room)}
	}
	c.found[k] = found
	rest, err := c.explainAlone(k)
	if err != nil {
		return err
	}
	if err := c.explainRest(k, rest); err != nil {
		return err
	}
	for _, e := range found {
		e.settle()
	}
	return nil
}

// explainAlone tries the changes one by one and gives the ids of those that
// make no sense without others.
func (c *comparing) explainAlone(k int) (rest map[string]bool, err error) {
	rest = map[string]bool{}
	reaching := c.reaching()
	tried := 0
	for _, change := range c.changes[k].changes {
		if !slices.ContainsFunc(change.ids, func(id string) bool { return reaching[id] }) {
			continue
		}
		if tried++; tried > mostExplained {
			break
		}
		b := change.aloneOn(c.books[0], c.books[k])
		if b == nil {
			for _, id := range change.ids {
				rest[id] = true
			}
			continue
		}
		if err := c.try(k, b, effect{about: change.about, label: change.label}); err != nil {
			return nil, err
		}
	}
	return rest, nil
}

// reaching are the lines of the first book that an outcome hangs on: no other
// line can move one by changing alone.
func (c *comparing) reaching() map[string]bool {
	b := *c.books[0]
	b.towards(c.ids())
	out := map[string]bool{}
	for _, i := range b.plan.Order {
		out[b.plan.Slots[i].ID()] = true
	}
	return out
}

func (c *comparing) ids() []string {
	var ids []string
	for _, o := range c.outcomes {
		ids = append(ids, o.id)
	}
	return ids
}

func (c *comparing) explainRest(k int, rest map[string]bool) error {
	label := "lines added or dropped"
	if !c.changes[k].structure() {
		label = "changes that need each other"
		if len(rest) == 0 {
			return nil
		}
	}
	b := restOn(c.books[0], c.books[k], rest)
	if b == nil {
		return nil
	}
	c.dropJoined(k, rest)
	return c.try(k, b, effect{label: label})
}

// dropJoined takes out the effects of changes that turned out to belong to the
// rest: they must not count twice.
func (c *comparing) dropJoined(k int, rest map[string]bool) {
	joined := map[string]bool{}
	for _, change := range c.changes[k].changes {
		if slices.ContainsFunc(change.ids, func(id string) bool { return rest[id] }) {
			joined[change.about] = true
		}
	}
	for _, e := range c.found[k] {
		e.effects = slices.DeleteFunc(e.effects, func(have effect) bool { return joined[have.about] })
	}
}

// try works the outcomes in b, which has a change made, and notes by how much
// their means move.
func (c *comparing) try(k int, b *Book, of effect) error {
	b.towards(c.ids())
	r, err := b.run(c.seasons, c.progress())
	if err != nil {
		return err
	}
	for _, o := range c.outcomes {
		if r.at(o.id) == c.runs[0].at(o.id) {
			continue // the change does not reach it
		}
		alone := r.valuesIn(o.id, o.unit())
		if alone == nil {
			continue
		}
		of.mean = outcome.Effect(o.values[0], o.values[k], alone)
		if of.mean != 0 {
			e := c.found[k][o]
			e.effects = append(e.effects, of)
		}
	}
	return nil
}

// settle leaves to the changes together what they do not do alone.
func (e *breakdown) settle() {
	e.together = e.difference.Mean
	size := math.Abs(e.together)
	for _, have := range e.effects {
		e.together -= have.mean
		size += math.Abs(have.mean)
	}
	// What rounding leaves of a sum is not something the changes do.
	if math.Abs(e.together) <= 1e-12*size {
		e.together = 0
	}
}
