package engine

import (
	"fmt"
	"strconv"

	"thawbook/engine/columns"
	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/units"
)

// ExplainOptions say where to explain a number, and how far down.
type ExplainOptions struct {
	Options
	// Season is where: "" or "likely" for the likely numbers; "middle", "low",
	// "high" for the season whose outcome is nearest the middle, the 1-in-10 low
	// and the 1-in-10 high; "bad" and "good" for low and high in the sense of the
	// line's headline; or a season's number, from 1.
	Season string
	// Depth is how many lines deep to go; 0 goes down to the guesses.
	Depth int
}

// Explanation takes one number back to the guesses it came from.
type Explanation struct {
	Title string `json:"title"`
	// At is the Season that was asked for, in full: "likely", "middle", "4120".
	At string `json:"at"`
	// Season is the season's number from 1, nil at the likely numbers; Seasons
	// and Seed tell which seasons it is one of.
	Season  *int   `json:"season"`
	Seasons int    `json:"seasons"`
	Seed    uint64 `json:"seed"`
	// Where says the same in words.
	Where string `json:"where"`
	Tree  *Step  `json:"tree"`
}

// deepest is how many lines deep an explanation goes at most, because those who
// read the tree recurse on it.
const deepest = 200

// Explain tells how the line or cell id came to its number at the likely numbers
// or in one season. The error is a diag.Diagnostic for a line that is not there
// or cannot be reckoned and for a season that is not there, or
// columns.ErrStopped.
func (b *Book) Explain(id string, o ExplainOptions) (*Explanation, error) {
	at, err := b.explainable(id)
	if err != nil {
		return nil, err
	}
	seasons, err := b.seasons(o.Options)
	if err != nil {
		return nil, err
	}
	if o.Season == "" {
		o.Season = "likely"
	}
	e := &Explanation{Title: b.sheet.Title, At: o.Season, Seasons: seasons.N, Seed: seasons.Seed}
	t := &tracer{plan: b.plan, system: o.System, depth: deepest, expanded: map[int]bool{}, told: map[string]bool{}}
	if o.Depth > 0 {
		t.depth = min(o.Depth, deepest)
	}
	if o.Season == "likely" {
		e.Where = "at the likely numbers"
		likely := outcome.AtLikely(b.plan)
		t.get = func(slot int) float64 { return likely[slot] }
	} else if err := b.explainSeason(e, t, at, o, seasons); err != nil {
		return nil, err
	}
	e.Tree = t.step(at, 0)
	return e, nil
}

// explainSeason works the seasons and sets t to the one asked for.
func (b *Book) explainSeason(e *Explanation, t *tracer, at int, o ExplainOptions, s columns.Seasons) error {
	if s.N > columns.MostKept {
		return diag.Diagnostic{Code: diag.TooMany, Severity: diag.Error, Message: "a season of so many cannot be looked at",
			Hint: "draw " + units.Number(columns.MostKept, units.One()) + " or fewer"}
	}
	r, err := b.run(s, o.Progress)
	if err != nil {
		return err
	}
	k, why, err := b.chooseSeason(r, at, o.Season)
	if err != nil {
		return err
	}
	number := k + 1
	e.Season = &number
	e.Where = fmt.Sprintf("in season %s of %s", units.Number(float64(number), units.One()), units.Number(float64(s.N), units.One()))
	if why != "" {
		e.Where += ", " + why
	}
	t.get = func(slot int) float64 { return r.result.Columns[slot].At(k) }
	t.run = r
	return nil
}

// chooseSeason is the place of the season asked for, from 0, and why it is that.
func (b *Book) chooseSeason(r *run, at int, season string) (k int, why string, err error) {
	n := r.result.Seasons.N
	if number, err := strconv.Atoi(season); err == nil {
		if number < 1 || number > n {
			return 0, "", noSuchSeason(season, fmt.Sprintf("name one from 1 to %d", n))
		}
		return number - 1, "", nil
	}
	slot := b.plan.Slots[at]
	if slot.Kind == formula.Choice {
		return 0, "", noSuchSeason(season, fmt.Sprintf("%q is a choice and the same in all: name a season's number", slot.ID()))
	}
	column := r.result.Columns[at]
	summary := r.summary(column)
	better := ""
	if slot.Line.Headline != nil {
		better = slot.Line.Headline.Better
	}
	target := summary.P50
	switch ends := map[string]string{"more": "low", "less": "high"}; {
	case season == "middle":
		why = "the one nearest the middle"
	case season == "low" || season == "bad" && ends[better] == "low" || season == "good" && ends[better] == "high":
		target, why = summary.P10, "the one nearest the 1-in-10 low"
	case season == "high" || season == "bad" && ends[better] == "high" || season == "good" && ends[better] == "low":
		target, why = summary.P90, "the one nearest the 1-in-10 high"
	case season == "bad" || season == "good":
		return 0, "", diag.Diagnostic{Code: diag.BadQuestion, Severity: diag.Error, About: slot.ID(), Place: slot.Line.Place,
			Message: fmt.Sprintf("which season is %s for %q is not said", season, slot.ID()),
			Hint:    "ask for low or high, or give its headline better: more or less"}
	default:
		return 0, "", noSuchSeason(season, diag.Nearest(season, []string{"likely", "middle", "bad", "good", "low", "high"}))
	}
	if column.Steady {
		return 0, "and the same in all others", nil
	}
	if k = outcome.Nearest(column.Values, target); k < 0 {
		return 0, "", noSuchSeason(season, fmt.Sprintf("%q comes to no number in any season: name a season's number", slot.ID()))
	}
	return k, why, nil
}

func noSuchSeason(season, hint string) error {
	return diag.Diagnostic{Code: diag.BadQuestion, Severity: diag.Error, Message: fmt.Sprintf("there is no season %q to look at", season), Hint: hint}
}

// explainable is the slot of a line or cell that comes to something, or why
// there is none.
func (b *Book) explainable(id string) (int, error) {
	i := b.plan.Find(id)
	if i >= 0 && !b.plan.Slots[i].Broken {
		return i, nil
	}
	for _, d := range b.list {
		if d.About == id && d.Severity == diag.Error {
			return -1, d
		}
	}
	if i >= 0 {
		return -1, diag.Diagnostic{Code: diag.WaitsFor, Severity: diag.Error, About: id, Message: fmt.Sprintf("%q cannot be reckoned", id),
			Hint: "put right what is wrong with the sheet first"}
	}
	var ids []string
	for _, slot := range b.plan.Slots {
		ids = append(ids, slot.ID())
	}
	hint := diag.Nearest(id, ids)
	if t := b.sheet.Table(id); t != nil && len(t.Rows) > 0 && len(t.Columns) > 0 {
		hint = fmt.Sprintf("name one cell of the table: %s.%s.%s", t.ID, t.Rows[0].ID, t.Columns[len(t.Columns)-1].ID)
	}
	return -1, diag.Diagnostic{Code: diag.UnknownName, Severity: diag.Error, Message: fmt.Sprintf("no line is called %q", id), Hint: hint}
}
