package guard

import (
	"errors"
	"math"
	"sort"
	"strconv"
	"strings"

	"thawbook/engine/diag"
	"thawbook/engine/workbook/calc"
)

// The furthest cell there is by the standard.
const (
	lastRow    = 1_048_576
	lastColumn = 16_384
)

// sheet reads one sheet's cells and the comments at them.
func (r *reader) sheet(part sheetPart, target string) error {
	s := &Sheet{Name: part.name, Hidden: part.hidden}
	r.out.Sheets = append(r.out.Sheets, s)
	c := &cells{reader: r, sheet: s, masters: map[string]master{}}
	err := r.walk(target, visitor{open: c.open, text: c.text, close: c.close})
	switch {
	case errors.Is(err, errMissing):
		r.warn(diag.ReadInPart, saveAgain, "the sheet %q is named but not there", part.name)
		return nil
	case errors.Is(err, errStop), errors.Is(err, errTooMuch):
		r.cutShort(part.name, c.row)
	case err != nil:
		return err
	}
	s.index()
	return r.remarks(s, target)
}

func (r *reader) cutShort(sheet string, row int) {
	if !r.cut {
		r.cut = true
		r.warn(diag.ReadInPart, "take out the sheets that hold other data", "the workbook holds more than is read: nothing after row %d of %q", row, sheet)
	}
}

// index puts the cells in order, the first one standing where two claim a place.
func (s *Sheet) index() {
	sort.SliceStable(s.Cells, func(i, j int) bool {
		a, b := s.Cells[i], s.Cells[j]
		return a.Row < b.Row || a.Row == b.Row && a.Column < b.Column
	})
	s.at = make(map[[2]int]int, len(s.Cells))
	for i, c := range s.Cells {
		if _, taken := s.at[[2]int{c.Row, c.Column}]; !taken {
			s.at[[2]int{c.Row, c.Column}] = i
		}
	}
}

// master is a formula that cells below or beside it share.
type master struct {
	formula     string
	row, column int
}

// cells gathers a sheet's cells as its elements come.
type cells struct {
	*reader
	sheet   *Sheet
	row     int
	column  int
	now     *Cell
	kind    string // the cell's type
	value   strings.Builder
	formula strings.Builder
	inside  string // "v" or "f"
	inline  gathered
	sharing string // the shared formula's number, "" when it is none
	masters map[string]master
}

func (c *cells) open(name string, attr attributes) error {
	switch name {
	case "row":
		c.row++
		if n, err := strconv.Atoi(attr.get("r")); err == nil && n >= 1 {
			c.row = n
		}
		c.column = 0
		if c.row > lastRow {
			return errStop
		}
	case "c":
		return c.begin(attr)
	case "v":
		c.inside = "v"
	case "f":
		c.inside, c.sharing = "f", ""
		if attr.get("t") == "shared" {
			c.sharing = attr.get("si")
		}
	default:
		c.inline.open(name)
	}
	return nil
}

func (c *cells) begin(attr attributes) error {
	c.column++
	if row, column, ok := calc.Address(attr.get("r")); ok {
		c.row, c.column = row, column
	}
	if c.column > lastColumn || c.row > lastRow {
		return errStop
	}
	if c.room <= 0 || c.letters <= 0 {
		return errStop
	}
	c.now = &Cell{Row: max(c.row, 1), Column: c.column}
	if style, err := strconv.Atoi(attr.get("s")); err == nil && style >= 0 && style < len(c.shown) {
		c.now.Shown = c.shown[style]
	}
	c.kind, c.sharing = attr.get("t"), ""
	c.value.Reset()
	c.formula.Reset()
	c.inline.Reset()
	return nil
}

func (c *cells) text(t []byte) {
	if c.now == nil {
		return
	}
	switch c.inside {
	case "v":
		if c.value.Len()+len(t) <= maxText {
			c.value.Write(t)
		}
	case "f":
		if c.formula.Len()+len(t) <= maxText {
			c.formula.Write(t)
		}
	default:
		c.inline.add(t)
	}
}

func (c *cells) close(name string) {
	switch name {
	case "v", "f":
		c.inside = ""
	case "c":
		if c.now != nil {
			c.end()
		}
		c.now = nil
	default:
		c.inline.close(name)
	}
}

// end settles what the cell holds and keeps it, if it holds anything.
func (c *cells) end() {
	now, text := c.now, c.value.String()
	now.Formula = c.shareFormula(strings.TrimPrefix(strings.TrimSpace(unescape(c.formula.String())), "="))
	switch c.kind {
	case "s":
		if i, err := strconv.Atoi(strings.TrimSpace(text)); err == nil && i >= 0 && i < len(c.strings) {
			now.Kind, now.Text = Text, c.strings[i]
		}
	case "inlineStr":
		now.Kind, now.Text = Text, c.inline.take()
	case "str":
		now.Kind, now.Text = Text, unescape(text)
	case "b":
		now.Kind, now.Number = Truth, 0
		if isTrue(strings.TrimSpace(text)) {
			now.Number = 1
		}
	case "e":
		now.Kind, now.Text = Fault, text
	case "d":
		now.Kind, now.Text = Text, text
	default:
		if x, err := strconv.ParseFloat(strings.TrimSpace(text), 64); err == nil && !math.IsInf(x, 0) && !math.IsNaN(x) {
			now.Kind, now.Number = Number, x
		}
	}
	if now.Kind == Text && strings.TrimSpace(now.Text) == "" {
		now.Kind, now.Text = Blank, ""
	}
	if now.Kind == Blank && now.Formula == "" {
		return
	}
	c.room--
	c.letters -= len(now.Text) + len(now.Formula)
	c.sheet.Cells = append(c.sheet.Cells, *now)
}

// shareFormula is the cell's own formula, or the one it shares moved to where it
// stands.
func (c *cells) shareFormula(text string) string {
	if c.sharing == "" {
		return text
	}
	if text != "" {
		if len(c.masters) < maxStyles {
			c.masters[c.sharing] = master{text, c.now.Row, c.now.Column}
		}
		return text
	}
	m, ok := c.masters[c.sharing]
	if !ok {
		return ""
	}
	moved, ok := calc.Shift(m.formula, c.now.Row-m.row, c.now.Column-m.column)
	if !ok {
		return ""
	}
	return moved
}
