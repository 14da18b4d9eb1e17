package partner

import (
	"errors"
	"fmt"
	"io"
	"math"

	"thawbook/engine"
	"thawbook/engine/diag"
	"thawbook/engine/outcome"
	"thawbook/engine/units"
	"thawbook/engine/workbook"
)

// HandOverOptions say how to hand over.
type HandOverOptions struct {
	// Options say how to reckon the ranges. Seasons and seed are the first
	// sheet's unless they say otherwise; System is not used, because formulas
	// read in the units that their lines are written in.
	engine.Options
	// Chance is in how many seasons what is laid in should last, as in "9/10",
	// which is also what "" means.
	Chance string
	// Made is when it is handed over, as in 2026-11-25T10:00:00Z, for the file's
	// own date; "" leaves that out.
	Made string
}

// HandOver writes books as one workbook that still calculates: the first is the
// one its cover speaks of, and several are set side by side over the same
// seasons. What to lay in goes along when the first sheet marks any. The error
// is a diag.Diagnostic for books that cannot go out together, columns.ErrStopped
// when o.Progress asked to stop, or w's own.
func HandOver(w io.Writer, books []*engine.Book, o HandOverOptions) error {
	in, err := gather(books, o)
	if err != nil {
		return err
	}
	return workbook.Write(w, in)
}

// gather asks the books for all that goes out.
func gather(books []*engine.Book, o HandOverOptions) (workbook.Input, error) {
	in := workbook.Input{Made: o.Made}
	if err := together(books); err != nil {
		return in, err
	}
	first := books[0].Sheet()
	o.System, o.Told = units.AsWritten, nil
	if o.Seasons == 0 {
		o.Seasons = first.Seasons
	}
	if o.Seed == nil {
		o.Seed = &first.Seed
	}
	for _, b := range books {
		p, err := gatherPlan(b, o.Options)
		if err != nil {
			return in, err
		}
		in.Plans = append(in.Plans, p)
	}
	var err error
	if in.LayIn, err = gatherLayIn(books[0], o); err != nil {
		return in, err
	}
	if len(books) > 1 {
		in.Compare, err = gatherCompare(books, o.Options)
	}
	return in, err
}

// together refuses what one workbook cannot hold.
func together(books []*engine.Book) error {
	refuse := func(hint, format string, args ...any) error {
		return diag.Diagnostic{Code: diag.NotComparable, Severity: diag.Error, Message: fmt.Sprintf(format, args...), Hint: hint}
	}
	switch {
	case len(books) == 0:
		return refuse("name a sheet", "there is nothing to hand over")
	case len(books) > workbook.MaxPlans:
		return refuse("hand them over in several workbooks", "one workbook holds up to %d sheets, not %d", workbook.MaxPlans, len(books))
	}
	for _, b := range books[1:] {
		if money := b.Sheet().Money; money != books[0].Sheet().Money {
			return refuse("hand them over one by one", "%q counts in %s and %q in %s", books[0].Sheet().Title, books[0].Sheet().Money, b.Sheet().Title, money)
		}
	}
	return nil
}

// gatherPlan is one book with what its seasons say.
func gatherPlan(b *engine.Book, o engine.Options) (workbook.Plan, error) {
	r, err := b.Reckon(o)
	if err != nil {
		return workbook.Plan{}, err
	}
	p := workbook.Plan{File: b.Name(), Source: b.Source(), Bound: b.Plan(), Likely: outcome.AtLikely(b.Plan()),
		Ranges: make([]*workbook.Range, len(b.Plan().Slots)), Seasons: r.Seasons, Seed: r.Seed, Paragraph: r.Paragraph}
	for _, a := range r.Lines {
		if i := b.Plan().Find(a.ID); i >= 0 && a.P50 != nil {
			p.Ranges[i] = &workbook.Range{Low: number(a.P10), Middle: number(a.P50), High: number(a.P90), Mean: number(a.Mean), Goal: a.Goal, Met: a.Shown.Goal}
		}
	}
	for _, c := range r.Cautions {
		p.Cautions = append(p.Cautions, workbook.Caution{Text: c.Text, Source: c.Source})
	}
	for _, list := range []diag.List{b.Diagnostics(), r.Warnings} {
		for _, d := range list {
			p.Warnings = append(p.Warnings, sentence(d))
		}
	}
	return p, nil
}

func number(x *float64) float64 {
	if x == nil {
		return math.NaN()
	}
	return *x
}

// sentence is a diagnostic for people who do not have the sheet before them.
func sentence(d diag.Diagnostic) string {
	text := d.Message
	if d.About != "" {
		text = d.About + ": " + text
	}
	if d.Seasons > 0 {
		text += fmt.Sprintf(", in %s of %s seasons", units.Number(float64(d.Seasons), units.One()), units.Number(float64(d.Of), units.One()))
	}
	return text + "."
}

// gatherLayIn is nil when the sheet marks nothing to lay in.
func gatherLayIn(b *engine.Book, o HandOverOptions) (*workbook.LayIn, error) {
	list, err := b.LayIn(engine.LayInQuestion{Options: o.Options, Chance: o.Chance})
	var d diag.Diagnostic
	if errors.As(err, &d) && d.Code == diag.NoneMarked {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	out := &workbook.LayIn{Chance: list.ChanceShown}
	for _, g := range list.Groups {
		for _, item := range g.Items {
			need := workbook.Need{Label: item.Label, Unit: item.Unit, Need: number(item.Need), OnHand: item.OnHand, Get: number(item.Buy)}
			if item.Cost != nil {
				need.Cost = item.Cost.Shown
			}
			out.Needs = append(out.Needs, need)
		}
	}
	if list.Total != nil {
		out.Total = list.Total.Shown
	}
	return out, nil
}

// gatherCompare is the books' difference from the first; nil when they share no
// outcome.
func gatherCompare(books []*engine.Book, o engine.Options) (*workbook.Comparison, error) {
	c, err := engine.Compare(books, engine.CompareOptions{Options: o})
	var d diag.Diagnostic
	if errors.As(err, &d) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	out := &workbook.Comparison{}
	for _, line := range c.Lines {
		one := workbook.Compared{ID: line.ID, Label: line.Label, Unit: line.Unit}
		for _, d := range line.Difference {
			one.Differences = append(one.Differences, &workbook.Difference{Low: number(d.P10), Middle: number(d.P50), High: number(d.P90), Ahead: d.Shown.Ahead})
		}
		out.Lines = append(out.Lines, one)
	}
	return out, nil
}
