package plain

import (
	"fmt"
	"slices"
	"strings"

	"thawbook/engine/diag"
	"thawbook/engine/units"
	"thawbook/engine/workbook/guard"
)

const (
	maxLines    = 2000 // lines and days that are made of one workbook
	maxHeadings = 60   // columns of one list
	maxLooked   = 300  // rows of a sheet in which headings are looked for
)

// finder gathers what is understood.
type finder struct {
	book  *guard.Book
	money string
	taken map[string]bool
	made  int
	out   Found
}

// Find looks for lists and logs in a workbook. money is the ISO code of the
// currency that its money is in. taken are ids that lines must not have; Find
// adds those it gives.
func Find(b *guard.Book, money string, taken map[string]bool) *Found {
	f := &finder{book: b, money: money, taken: taken, out: Found{Lists: []List{}, Logs: []Log{}, Told: diag.List{}}}
	for _, s := range b.Sheets {
		f.sheet(s)
	}
	return &f.out
}

func (f *finder) tell(s *guard.Sheet, row int, hint, format string, args ...any) {
	f.out.Told = append(f.out.Told, diag.Diagnostic{Code: diag.CellNotRead, Severity: diag.Warning, Hint: hint,
		Place: diag.Place{File: s.Name, Line: row}, Message: fmt.Sprintf(format, args...)})
}

// line is the cells of one row.
type line []guard.Cell

// rowsOf are a sheet's rows that hold anything.
func rowsOf(s *guard.Sheet) []line {
	var out []line
	for from := 0; from < len(s.Cells); {
		to := from
		for to < len(s.Cells) && s.Cells[to].Row == s.Cells[from].Row {
			to++
		}
		out = append(out, s.Cells[from:to])
		from = to
	}
	return out
}

// sheet reads every block below a row of headings.
func (f *finder) sheet(s *guard.Sheet) {
	rows := rowsOf(s)
	for at := 0; at < len(rows) && at < maxLooked; {
		h, log := f.headings(rows[at])
		if h == nil {
			at++
			continue
		}
		end := at + 1
		for end < len(rows) {
			if next, _ := f.headings(rows[end]); next != nil {
				break
			}
			end++
		}
		if log {
			f.log(s, rows[at][0].Row, h, rows[at+1:end])
		} else {
			f.list(s, rows[at][0].Row, h, rows[at+1:end])
		}
		at = end
	}
}

// head is a column by its heading.
type head struct {
	Heading
	column int
}

// headings are the columns of a row that is one of headings, nil for any other;
// log says that they are a log's.
func (f *finder) headings(row line) (heads []head, log bool) {
	if len(row) > maxHeadings {
		return nil, false
	}
	asList, asLog := make([]head, 0, len(row)), make([]head, 0, len(row))
	for _, c := range row {
		if c.Kind != guard.Text || len(c.Text) > 80 {
			if c.Kind == guard.Blank {
				continue
			}
			return nil, false // a number is no heading
		}
		words, unit := f.split(c.Text)
		asList = append(asList, head{Heading{c.Text, meaning(listWords(), words), unit}, c.Column})
		asLog = append(asLog, head{Heading{c.Text, meaning(logWords(), words), unit}, c.Column})
	}
	if once(asLog); has(asLog, "day") && count(asLog) >= 3 {
		return asLog, true
	}
	if once(asList); has(asList, "name") && has(asList, "number") {
		return asList, false
	}
	return nil, false
}

// split takes the unit off a heading: what stands in brackets, or behind a comma
// or at the end and is a measure that everyone knows.
func (f *finder) split(text string) (words []string, unit string) {
	text = strings.ReplaceAll(text, "_", " ")
	if from := strings.IndexAny(text, "(["); from >= 0 {
		inside, rest := text[from+1:], ""
		if to := strings.IndexAny(inside, ")]"); to >= 0 {
			inside, rest = inside[:to], inside[to+1:]
		}
		if _, err := units.Parse(inside, f.money); err == nil {
			unit = strings.TrimSpace(inside)
		}
		text = text[:from] + rest
	}
	words = strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(" ,:;.-–/?#*\n\t", r) })
	if n := len(words); unit == "" && n > 1 && isMeasure(words[n-1], f.money) {
		// Brix and sugar name the thing and its measure at once.
		if meaning(logWords(), words[n-1:]) == "" {
			unit, words = words[n-1], words[:n-1]
		}
	}
	return words, unit
}

// isMeasure says whether a word is a unit and no count of just anything.
func isMeasure(word, money string) bool {
	u, err := units.Parse(word, money)
	return err == nil && !u.Dim().IsCount()
}

// vocabulary is what words at the head of a column mean, tried in order.
type vocabulary []struct {
	means string
	words []string
}

func listWords() vocabulary {
	return vocabulary{
		{"low", []string{"low", "lowest", "min", "minimum", "least", "worst", "smallest"}},
		{"high", []string{"high", "highest", "max", "maximum", "best", "largest"}},
		{"number", []string{"number", "value", "amount", "quantity", "qty", "count", "likely", "expected", "estimate", "guess", "how", "price", "cost", "usual"}},
		{"unit", []string{"unit", "units", "measure", "measured"}},
		{"note", []string{"note", "notes", "comment", "comments", "remark", "remarks", "source"}},
		{"name", []string{"name", "item", "items", "line", "what", "thing", "things", "description", "label", "material", "materials", "expense"}},
	}
}

func logWords() vocabulary {
	return vocabulary{
		{"day", []string{"date", "day", "when", "batch", "boil"}},
		{"sugar", []string{"sugar", "brix", "bx", "°bx", "°brix", "sweetness"}},
		{"syrup", []string{"syrup", "made", "bottled", "finished"}},
		{"sap", []string{"sap", "collected", "gathered"}},
		{"hours", []string{"hours", "hour", "hrs", "time", "boiled", "boiling"}},
		{"fuel", []string{"fuel", "wood", "firewood", "propane", "gas", "oil", "pallets", "burned"}},
	}
}

// meaning is what the first word that means something says.
func meaning(v vocabulary, words []string) string {
	for _, m := range v {
		for _, w := range words {
			if slices.Contains(m.words, w) {
				return m.means
			}
		}
	}
	return ""
}

// once keeps the first column of each meaning.
func once(heads []head) {
	seen := map[string]bool{}
	for i := range heads {
		if seen[heads[i].Means] {
			heads[i].Means = ""
		}
		seen[heads[i].Means] = true
	}
}

func has(heads []head, means string) bool {
	return slices.ContainsFunc(heads, func(h head) bool { return h.Means == means })
}

func count(heads []head) int {
	n := 0
	for _, h := range heads {
		if h.Means != "" {
			n++
		}
	}
	return n
}

// shown are the headings as they are told.
func shown(heads []head) []Heading {
	out := make([]Heading, len(heads))
	for i, h := range heads {
		out[i] = h.Heading
	}
	return out
}

// cells are a row's cells by what their columns mean.
func cells(row line, heads []head) map[string]guard.Cell {
	out := map[string]guard.Cell{}
	for _, c := range row {
		for _, h := range heads {
			if h.column == c.Column && h.Means != "" {
				out[h.Means] = c
			}
		}
	}
	return out
}

func words(c guard.Cell) string { return strings.Join(strings.Fields(c.Text), " ") }
