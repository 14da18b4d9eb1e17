package back

import (
	"thawbook/engine/workbook"
	"thawbook/engine/workbook/guard"
)

// lookedUp are maps made when they are first asked for.
type lookedUp struct {
	means   map[spot]cellKey
	named   map[string]workbook.Entry
	ids     map[spot]string
	numbers map[string]float64
	rows    map[rowAt]*row
}

// rowAt is where a row stands.
type rowAt struct {
	sheet *guard.Sheet
	at    int
}

// rowsAt are the rows by where they stand.
func (c *comparer) rowsAt() map[rowAt]*row {
	if c.looked.rows == nil {
		c.looked.rows = map[rowAt]*row{}
		for _, r := range c.rows {
			c.looked.rows[rowAt{r.sheet, r.at}] = r
		}
	}
	return c.looked.rows
}

// meaning is the line's number that each cell holds.
func (c *comparer) meaning() map[spot]cellKey {
	if c.looked.means == nil {
		c.looked.means = map[spot]cellKey{}
		for k, at := range c.cells {
			if k.plan == c.plan {
				c.looked.means[at] = k
			}
		}
	}
	return c.looked.means
}

// named are the entries by their defined names in small letters.
func (c *comparer) named() map[string]workbook.Entry {
	if c.looked.named == nil {
		c.looked.named = map[string]workbook.Entry{}
		for _, e := range c.Index.Entries {
			if e.Part != workbook.Past {
				c.looked.named[lower(e.Name)] = e
			}
		}
	}
	return c.looked.named
}

// idsAt are the tables by the cells that hold the ids of their rows.
func (c *comparer) idsAt() map[spot]string {
	if c.looked.ids == nil {
		c.looked.ids = map[spot]string{}
		for k, r := range c.rows {
			if column, ok := r.columns[columnKey{part: workbook.ID}]; ok && k.plan == c.plan && r.area == workbook.TableArea {
				c.looked.ids[spot{r.sheet, r.at, column}] = r.of
			}
		}
	}
	return c.looked.ids
}

// sentNumbers are the numbers that were sent, by line.
func (c *comparer) sentNumbers() map[string]float64 {
	if c.looked.numbers == nil {
		c.looked.numbers = map[string]float64{}
		for _, group := range c.entries {
			if e, ok := entryOf(group, workbook.Value); ok {
				c.looked.numbers[e.ID], _ = e.Number()
			}
		}
	}
	return c.looked.numbers
}
