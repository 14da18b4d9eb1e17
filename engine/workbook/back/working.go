package back

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"thawbook/engine/formula"
	"thawbook/engine/sheet"
	"thawbook/engine/workbook"
	"thawbook/engine/workbook/calc"
)

// maxTranslations bounds the formulas that are read, because each is held to the
// whole sheet. A partner changes a handful.
const maxTranslations = 200

// cameWorking reads a formula that is not the one that was sent.
func (c *comparer) cameWorking(e workbook.Entry, r reading, sent Said, ch Change) (Said, Change, bool) {
	ch.What = Formulas
	text, err := "", errors.New(r.text)
	if r.term != nil {
		text, err = c.translate(e, r.term)
	}
	switch {
	case err == nil:
		return Said{Kind: sheet.Formula, Formula: text}, ch, true
	case sent.Kind == sheet.Formula:
		ch.Problem = "its new working cannot be read: " + err.Error()
		ch.Came = r.at.cell().Formula
		return sent, ch, true
	case !r.hasValue:
		c.notRead(r.at, e.ID, "", "%s is worked out in a way that cannot be read: %v", c.label(e.ID), err)
		return sent, ch, false
	}
	ch.Note = "it is worked out in a way that cannot be read, so the number it came to is offered: " + err.Error()
	if sent.Kind == sheet.Guess {
		return Said{Kind: sheet.Guess, Low: sent.Low, Likely: r.x, High: sent.High}, ch, true
	}
	return Said{Kind: sheet.Is, Is: r.x}, ch, true
}

// translate says a workbook's formula in our language. Two ways are tried: with
// the lines' names alone, which reads best, and with every unit taken off and
// put on again at the end. Whichever is offered has been worked beside the
// workbook's own on numbers of all sizes, and came to the same.
func (c *comparer) translate(e workbook.Entry, term *calc.Term) (string, error) {
	if c.translations++; c.translations > maxTranslations {
		return "", fmt.Errorf("more than %d workings were changed", maxTranslations)
	}
	var wrong error
	for _, bare := range []bool{false, true} {
		t := &translator{comparer: c, entry: e, bare: bare}
		if e.Formula != "" && e.Written != "" {
			t.own, _ = calc.Parse(e.Written)
		}
		p, err := t.say(term)
		if err == nil {
			text := t.whole(p)
			if err = c.agrees(e, term, text, t); err == nil {
				return text, nil
			}
		}
		if wrong == nil || !bare {
			wrong = err
		}
	}
	return "", wrong
}

// whole is the formula as the line takes it.
func (t *translator) whole(p said) string {
	text := strings.TrimSuffix(strings.TrimPrefix(p.text, "("), ")")
	if !balanced(text) {
		text = p.text
	}
	if t.bare && p.kind == numeric && t.entry.Unit != "1" && t.entry.Unit != "yes/no" {
		return "of(" + text + ", " + inQuotes(t.entry.Unit) + ")"
	}
	return text
}

// balanced says whether every bracket in text closes one that is open.
func balanced(text string) bool {
	depth := 0
	for _, c := range text {
		switch c {
		case '(':
			depth++
		case ')':
			if depth--; depth < 0 {
				return false
			}
		}
	}
	return depth == 0
}

func inQuotes(text string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(text) + `"`
}

const trials = 12

// agrees works a formula of ours beside the workbook's, on numbers around those
// of the sheet, each moved on its own.
func (c *comparer) agrees(e workbook.Entry, term *calc.Term, text string, t *translator) error {
	changed, list := sheet.Try(c.here.Sheet, []sheet.Edit{{About: e.ID, Set: sheet.Set{Formula: &text}}})
	if len(list) > 0 {
		return errors.New(list[0].Message)
	}
	plan, list := c.here.Rebind(changed)
	at := plan.Find(e.ID)
	if plan.Slots[at].Broken {
		for _, d := range list {
			if d.About == e.ID {
				return errors.New(d.Message)
			}
		}
		return errors.New("it waits for a line that is wrong")
	}
	slot, alike := plan.Slots[at], 0
	for trial := range trials {
		get := func(i int) float64 { return c.guessAt(i, trial) }
		ours := formula.Eval(slot.Expr, get, make([]float64, slot.Vars), nil)
		theirs := t.work(term, get)
		switch {
		case math.IsNaN(ours) || math.IsInf(ours, 0) || math.IsNaN(theirs) || math.IsInf(theirs, 0):
		case math.Abs(ours-theirs) <= 1e-9*math.Max(math.Abs(ours), math.Abs(theirs)):
			alike++
		default:
			return errors.New("it does not come to the same in the units of this sheet")
		}
	}
	if alike == 0 {
		return errors.New("it comes to no number")
	}
	return nil
}

// guessAt is a number for a slot in a trial: what it is in the first, and
// something from half to half as much again in the others.
func (c *comparer) guessAt(i, trial int) float64 {
	slot := c.here.Slots[i]
	// A multiplier that scatters well over so few numbers; the same every time.
	mixed := uint64(i*trials+trial+1) * 0x9E3779B97F4A7C15
	share := float64(mixed>>11) / (1 << 53)
	switch slot.Kind {
	case formula.Choice:
		return float64(int(share * float64(len(slot.Names))))
	case formula.Truth:
		return math.Round(share)
	}
	x := c.numberOf(slot.ID())
	if trial == 0 {
		return x
	}
	return x * (0.5 + share)
}

// numberOf is about what a line comes to: what was sent, or what it says now.
func (c *comparer) numberOf(id string) float64 {
	if x := c.sentNumbers()[id]; x != 0 {
		return x
	}
	if l := c.here.Sheet.Find(id); l != nil {
		if x, ok := saidBy(l).middle(); ok && x != 0 {
			return x
		}
	}
	return 3
}
