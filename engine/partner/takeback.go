package partner

import (
	"path"
	"slices"
	"strings"

	"thawbook/engine"
	"thawbook/engine/diag"
	"thawbook/engine/sheet"
	"thawbook/engine/workbook/back"
	"thawbook/engine/workbook/guard"
)

// TakeBack reads a workbook that came back and says what its person changed,
// against what went out and against book, the sheet as it is now. Each change
// that can be taken tells what it does to the headline lines' middle season.
// Nothing is changed. The report is nil when the file is no workbook of ours;
// the diagnostics then say why. The error is that of the reckoning.
func TakeBack(file []byte, book *engine.Book, o engine.Options) (*back.Report, diag.List, error) {
	opened, list := guard.Open(file)
	if opened == nil {
		return nil, list, nil
	}
	found := back.Find(opened)
	if found == nil {
		return nil, append(list, diag.Diagnostic{Code: diag.MarksLost, Severity: diag.Error,
			Message: "nothing in this workbook is marked as ours", Hint: "take back a workbook that went out with handover"}), nil
	}
	plan := planOf(found, book)
	if plan == 0 {
		plan = 1
		list = append(list, diag.Diagnostic{Code: diag.WrongPlan, Severity: diag.Warning,
			Message: "this workbook went out from " + sentFrom(found) + ", not from \"" + path.Base(book.Name()) + "\"",
			Hint:    "its first plan is compared; name its own sheet unless that file was renamed"})
	}
	report := found.Compare(plan, sentSheet(found, plan, book), book.Plan())
	report.Told = append(list, report.Told...)
	before, err := book.Reckon(o)
	if err != nil {
		return nil, nil, err
	}
	for i := range report.Changes {
		c := &report.Changes[i]
		if c.What == back.Numbers || c.What == back.Formulas {
			c.Effects, err = effects(book, before, c.Edits, o)
			if err != nil {
				return nil, nil, err
			}
		}
	}
	return &report, nil, nil
}

// planOf is the plan, counted from 1, that went out from book's file; 0 when none
// did, and 1 when the workbook no longer says.
func planOf(found *back.Workbook, book *engine.Book) int {
	for i, p := range found.Index.Plans {
		if path.Base(p.File) == path.Base(book.Name()) {
			return i + 1
		}
	}
	if found.Lost {
		return 1
	}
	return 0
}

func sentFrom(found *back.Workbook) string {
	var files []string
	for _, p := range found.Index.Plans {
		files = append(files, "\""+path.Base(p.File)+"\"")
	}
	return strings.Join(files, " and ")
}

// sentSheet is the sheet as it went out, for the words of its labels; nil when
// it was taken from another, which did not travel along.
func sentSheet(found *back.Workbook, plan int, book *engine.Book) *sheet.Sheet {
	if plan > len(found.Index.Plans) {
		return nil
	}
	doc, _ := sheet.Parse(book.Name(), found.Index.Plans[plan-1].Source)
	if doc == nil || doc.From() != "" {
		return nil
	}
	sent, _ := sheet.Resolve(doc, nil)
	return sent
}

// effects says how edits move the headline lines, those that they do not move
// left out.
func effects(book *engine.Book, before *engine.Reckoning, edits []sheet.Edit, o engine.Options) ([]back.Effect, error) {
	out := []back.Effect{}
	tried, list := book.Try(edits...)
	if len(list) > 0 {
		return out, nil // taking it will say why it cannot be
	}
	after, err := tried.Reckon(o)
	if err != nil {
		return nil, err
	}
	for i, was := range before.Lines {
		if !was.Headline || i >= len(after.Lines) || after.Lines[i].Shown.Middle == was.Shown.Middle {
			continue
		}
		is := after.Lines[i]
		e := back.Effect{About: was.ID, Label: was.Label, Before: was.Shown.Middle, After: is.Shown.Middle}
		if was.P50 != nil && is.P50 != nil && was.Better != "" {
			e.Better = "no"
			if (*is.P50 > *was.P50) == (was.Better == "more") {
				e.Better = "yes"
			}
		}
		out = append(out, e)
	}
	return out, nil
}

// Accept takes the changes of those keys into the sheet, in the report's order;
// "all" takes every change that can be taken and is no conflict. It answers the
// book with them, the keys taken, and why others were not: a change that cannot
// be taken leaves the sheet as it was before it.
func Accept(book *engine.Book, report *back.Report, keys ...string) (*engine.Book, []string, diag.List) {
	taken := []string{}
	var list diag.List
	all := slices.Contains(keys, "all")
	known := []string{"all"}
	for _, c := range report.Changes {
		known = append(known, c.Key)
		if !slices.Contains(keys, c.Key) && (!all || c.Conflict || len(c.Edits) == 0) {
			continue
		}
		if len(c.Edits) == 0 {
			list = append(list, diag.Diagnostic{Code: diag.CellNotRead, Severity: diag.Error, About: c.About, Message: c.Problem})
			continue
		}
		next, wrong := takeIn(book, c.Edits)
		if len(wrong) > 0 {
			list = append(list, wrong...)
			continue
		}
		book, taken = next, append(taken, c.Key)
	}
	for _, key := range keys {
		if !slices.Contains(known, key) {
			list = append(list, diag.Diagnostic{Code: diag.EditUnknown, Severity: diag.Error, About: key,
				Message: "no change is called \"" + key + "\"", Hint: diag.Nearest(key, known)})
		}
	}
	return book, taken, list
}

// takeIn makes all edits of one change, or none.
func takeIn(book *engine.Book, edits []sheet.Edit) (*engine.Book, diag.List) {
	for _, e := range edits {
		next, list := book.Edit(e)
		if len(list) > 0 {
			return nil, list
		}
		book = next
	}
	return book, nil
}
