package back

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/outcome"
	"thawbook/engine/sheet"
	"thawbook/engine/workbook"
	"thawbook/engine/workbook/guard"
)

const grove = `thawbook: 1
title: Grove
chapters:
  - title: Trees
    lines:
      - {id: taps, label: Taps hung, is: 140, unit: tap, note: A bucket each.}
      - {id: each, label: Sap from one, guess: {low: 5, likely: 9, high: 14}, unit: gal/tap, floor: 0}
      - {id: evenings, label: Evenings, records: [3, 5, 4, 8], unit: h}
      - {id: fuel, label: Burned, choose: wood, among: fuels}
      - {id: sap, label: Sap, formula: taps * each, unit: gal}
      - {id: enough, label: Enough, formula: 'sap > of(1000, "gal")', unit: yes/no}
      - {id: jars, label: Jars, formula: 'ceil(sap / of(40, "gal/jar"))', unit: jar}
      - {id: cost, label: Cost, formula: 'sap * fuels[fuel].price', unit: $}
    tables:
      - id: fuels
        label: Fuels
        columns:
          - {id: price, label: Price, unit: $/qt}
          - {id: dear, label: Dearer, formula: price * 2, unit: $/qt}
        rows:
          - {id: wood, label: Wood, price: 0}
          - {id: gas, label: Gas, price: {guess: {low: 0.1, likely: 0.2, high: 0.4}}}
`

func boundText(t testing.TB, text string) (workbook.Plan, *formula.Plan) {
	doc, list := sheet.Parse("grove.yaml", []byte(text))
	require.Empty(t, list)
	resolved, list := sheet.Resolve(doc, nil)
	require.Zero(t, list.Errors(), list)
	plan, list := formula.Bind(resolved)
	require.Zero(t, list.Errors(), list)
	return workbook.Plan{File: "grove.yaml", Source: []byte(text), Bound: plan, Likely: outcome.AtLikely(plan),
		Seasons: 100, Seed: 1, Ranges: make([]*workbook.Range, len(plan.Slots))}, plan
}

// desk is the grove's workbook on a partner's desk.
type desk struct {
	*testing.T
	f     *excelize.File
	cells map[cellKey]spot
	plan  *formula.Plan
}

func newDesk(t *testing.T) *desk {
	p, plan := boundText(t, grove)
	var b bytes.Buffer
	require.NoError(t, workbook.Write(&b, workbook.Input{Plans: []workbook.Plan{p}}))
	book, list := guard.Open(b.Bytes())
	require.Empty(t, list)
	f, err := excelize.OpenReader(bytes.NewReader(b.Bytes()))
	require.NoError(t, err)
	return &desk{t, f, Find(book).cells, plan}
}

func (d *desk) at(id string, part workbook.Part) (sheet, cell string) {
	s, ok := d.cells[cellKey{lineKey{1, id}, part}]
	require.True(d, ok, "%s %s", id, part)
	cell, err := excelize.CoordinatesToCellName(s.column, s.row)
	require.NoError(d, err)
	return s.sheet.Name, cell
}

// beside is a cell of a line's row, so many columns from its number.
func (d *desk) beside(id string, columns int) (sheet, cell string) {
	s := d.cells[cellKey{lineKey{1, id}, workbook.Value}]
	cell, err := excelize.CoordinatesToCellName(s.column+columns, s.row)
	require.NoError(d, err)
	return s.sheet.Name, cell
}

func (d *desk) write(id string, part workbook.Part, value any) {
	name, cell := d.at(id, part)
	require.NoError(d, d.f.SetCellFormula(name, cell, ""))
	require.NoError(d, d.f.SetCellValue(name, cell, value))
}

func (d *desk) work(id, text string) {
	name, cell := d.at(id, workbook.Value)
	require.NoError(d, d.f.SetCellFormula(name, cell, text))
}

func (d *desk) file() []byte {
	var b bytes.Buffer
	require.NoError(d, d.f.Write(&b))
	return b.Bytes()
}

func (d *desk) back() Report { return reported(d.T, d.file(), d.plan) }

// only is the one change that came back.
func (d *desk) only() Change {
	r := d.back()
	require.Len(d, r.Changes, 1, "%+v", r)
	assert.Empty(d, r.Lost)
	return r.Changes[0]
}

func TestWorkingsComeBackInOurWords(t *testing.T) {
	for _, c := range []struct{ id, written, ours string }{
		{"sap", "taps*each*0.9", "(taps * each) * 0.9"},
		{"sap", "0.9*(taps*each)", "0.9 * (taps * each)"},
		{"sap", "ROUND(taps*each,0)", "round((taps * each))"},
		{"sap", "MAX(taps*each-10,0)", `of(max((number((taps * each), "gal") - 10), 0), "gal")`},
		{"sap", "IF(fuel=\"gas\",taps*each,taps*each/2)", `(fuel == "gas") ? (taps * each) : ((taps * each) / 2)`},
		{"taps", "70*2", `of(70 * 2, "tap")`},
		{"enough", "IF(sap>2000,1,0)", `number(sap, "gal") > 2000`},
		{"enough", "IF(AND(sap>1000,NOT(taps>200)),1,0)", `(number(sap, "gal") > 1000) and (not (number(taps, "tap") > 200))`},
		{"cost", "sap*4*INDEX(fuels_price,MATCH(fuel,fuels_id,0))*1.1", ""},
		{"cost", "SUM(fuels_price)*sap", ""},
		{"cost", "AVERAGE(fuels_price)*4*sap", ""},
		{"each", "5%*180", ""},
	} {
		d := newDesk(t)
		d.work(c.id, c.written)
		ch := d.only()
		assert.Equal(t, Formulas, ch.What)
		require.Empty(t, ch.Problem, c.written)
		require.Len(t, ch.Edits, 1, c.written)
		require.NotNil(t, ch.Edits[0].Set.Formula, "%s: %+v", c.written, ch)
		if c.ours != "" {
			assert.Equal(t, c.ours, *ch.Edits[0].Set.Formula, c.written)
		}
	}
}

// A number of gallons and a price for a quart: the partner's arithmetic has no
// units, and must come to the same number in ours.
func TestAWorkingKeepsItsNumberWhereUnitsDiffer(t *testing.T) {
	d := newDesk(t)
	d.write("fuel", workbook.Value, "gas")
	d.work("cost", "sap*3*fuels_gas_price")
	r := d.back()
	require.Len(t, r.Changes, 2)
	i := slices.IndexFunc(r.Changes, func(c Change) bool { return c.About == "cost" })
	require.Len(t, r.Changes[i].Edits, 1)
	changed, list := sheet.Try(d.plan.Sheet, r.Changes[i].Edits)
	require.Empty(t, list)
	plan, list := d.plan.Rebind(changed)
	require.Zero(t, list.Errors())
	assert.InDelta(t, 140*9*3*0.2, outcome.AtLikely(plan)[plan.Find("cost")], 1e-9)
}

func TestWorkingsThatCannotBeReadAreNotGuessedAt(t *testing.T) {
	for _, written := range []string{"TAN(sap)", "sap*Z99", "sap&\"x\"", "OFFSET(sap,1,0)", "cost*2", "each_low*taps", "sap+"} {
		d := newDesk(t)
		d.work("cost", written)
		ch := d.only()
		assert.NotEmpty(t, ch.Problem, written)
		assert.Empty(t, ch.Edits, written)
	}
	// An input keeps the number that the working came to.
	d := newDesk(t)
	name, cell := d.at("taps", workbook.Value)
	require.NoError(t, d.f.SetCellValue(name, cell, 123))
	require.NoError(t, d.f.SetCellFormula(name, cell, "TAN(sap)"))
	ch := d.only()
	require.Len(t, ch.Edits, 1)
	assert.InDelta(t, 123, *ch.Edits[0].Set.Is, 0)
	assert.Contains(t, ch.Note, "TAN")
}

func TestGuessesChoicesAndRecords(t *testing.T) {
	d := newDesk(t)
	d.write("each", workbook.Low, 6)
	d.write("each", workbook.High, "15 gal/tap")
	ch := d.only()
	assert.Equal(t, sheet.GuessValue{Low: 6, Likely: 9, High: 15}, *ch.Edits[0].Set.Guess)
	assert.Equal(t, "9 gal/tap, from 6 to 15", ch.Came)

	d = newDesk(t)
	d.write("each", workbook.Low, nil)
	d.write("each", workbook.High, nil)
	assert.InDelta(t, 9, *d.only().Edits[0].Set.Is, 0, "a guess without its ends is a number")

	d = newDesk(t)
	d.write("taps", workbook.Low, 100)
	d.write("taps", workbook.High, 180)
	assert.Equal(t, sheet.GuessValue{Low: 100, Likely: 140, High: 180}, *d.only().Edits[0].Set.Guess)

	for _, text := range []string{"gas", "GAS", " Gas "} {
		d = newDesk(t)
		d.write("fuel", workbook.Value, text)
		assert.Equal(t, "gas", *d.only().Edits[0].Set.Choose)
	}
	d = newDesk(t)
	d.write("fuel", workbook.Value, "gaz")
	r := d.back()
	assert.Empty(t, r.Changes)
	require.NotEmpty(t, r.Told)
	assert.Contains(t, r.Told[0].Hint, "gas")

	d = newDesk(t)
	require.NoError(t, d.f.SetCellValue("Records", "A8", 6.5))
	assert.Equal(t, []float64{3, 5, 4, 8, 6.5}, d.only().Edits[0].Set.Records)
	d = newDesk(t)
	for i, x := range []float64{8, 5, 3, 4} {
		require.NoError(t, d.f.SetCellValue("Records", "A"+string(rune('4'+i)), x))
	}
	assert.Empty(t, d.back().Changes, "records in another order")
}

func TestNumbersInOtherClothes(t *testing.T) {
	for _, value := range []any{"140", " 140 tap", 140.00000000000003} {
		d := newDesk(t)
		d.write("taps", workbook.Value, value)
		assert.Empty(t, d.back().Changes, value)
	}
	d := newDesk(t)
	d.write("taps", workbook.Value, "1,240 taps")
	assert.InDelta(t, 1240, *d.only().Edits[0].Set.Is, 0)
	d = newDesk(t)
	style, err := d.f.NewStyle(&excelize.Style{NumFmt: 14})
	require.NoError(t, err)
	name, cell := d.at("taps", workbook.Value)
	require.NoError(t, d.f.SetCellValue(name, cell, 45000))
	require.NoError(t, d.f.SetCellStyle(name, cell, cell, style))
	r := d.back()
	assert.Empty(t, r.Changes)
	require.NotEmpty(t, r.Told)
	assert.Contains(t, r.Told[0].Message, "a date")
	assert.Equal(t, diag.CellNotRead, r.Told[0].Code)
}

func TestBothEndsChanged(t *testing.T) {
	d := newDesk(t)
	d.write("taps", workbook.Value, 160)
	file := d.file()
	for name, c := range map[string]struct {
		here              string
		changes, agreed   int
		conflict, problem bool
	}{
		"nothing here":   {"is: 140", 1, 0, false, false},
		"the same here":  {"is: 160", 0, 1, false, false},
		"another here":   {"is: 150", 1, 0, true, false},
		"a guess here":   {"guess: {low: 1, likely: 2, high: 3}", 1, 0, true, false},
		"a working here": {`formula: 'of(3, "tap")'`, 1, 0, true, false},
	} {
		_, here := boundText(t, strings.Replace(grove, "is: 140", c.here, 1))
		r := reported(t, file, here)
		assert.Len(t, r.Changes, c.changes, name)
		assert.Len(t, r.Agreed, c.agreed, name)
		if c.changes > 0 {
			assert.Equal(t, c.conflict, r.Changes[0].Conflict, name)
			assert.Equal(t, "140 taps", r.Changes[0].Sent)
			assert.Equal(t, c.conflict, r.Changes[0].Here != "", name)
		}
	}
	_, here := boundText(t, strings.Replace(grove, "is: 140", "is: 150", 1))
	untouched := newDesk(t)
	assert.Empty(t, reported(t, untouched.file(), here).Changes, "what only changed here is no change of the partner's")
}

func TestRowsOfThePartnersOwn(t *testing.T) {
	d := newDesk(t)
	s := d.cells[cellKey{lineKey{1, "taps"}, workbook.Value}]
	require.NoError(t, d.f.InsertRows(s.sheet.Name, s.row+1, 1))
	for column, value := range map[string]any{"A": "Kettles", "B": 2, "C": "kettle"} {
		require.NoError(t, d.f.SetCellValue("Plan", column+itoa(s.row+1), value))
	}
	ch := d.only()
	assert.Equal(t, NewLine, ch.What)
	assert.Equal(t, "kettles", ch.Key)
	assert.Equal(t, &sheet.Add{Chapter: "Trees", After: "taps"}, ch.Edits[0].Add)
	assert.Equal(t, "kettle", *ch.Edits[0].Set.Unit)

	d = newDesk(t)
	s = d.cells[cellKey{lineKey{1, "fuels.gas.price"}, workbook.Value}]
	require.NoError(t, d.f.InsertRows(s.sheet.Name, s.row+1, 1))
	require.NoError(t, d.f.SetCellValue(s.sheet.Name, "A"+itoa(s.row+1), "Coal"))
	cell, err := excelize.CoordinatesToCellName(s.column, s.row+1)
	require.NoError(t, err)
	require.NoError(t, d.f.SetCellValue(s.sheet.Name, cell, 0.3))
	ch = d.only()
	assert.Equal(t, NewRow, ch.What)
	assert.Equal(t, "fuels.coal", ch.About)
	require.Len(t, ch.Edits, 2)
	assert.Equal(t, "fuels.coal.price", ch.Edits[1].About)
}

func itoa(n int) string {
	return sheet.FormatNumber(float64(n))
}

func TestRemarksNotesAndComments(t *testing.T) {
	d := newDesk(t)
	name, cell := d.beside("taps", 5)
	require.NoError(t, d.f.SetCellStr(name, cell, "=too many, I think"))
	ch := d.only()
	assert.Equal(t, Remarks, ch.What)
	assert.Equal(t, "A bucket each. =too many, I think", *ch.Edits[0].Set.Note)

	d = newDesk(t)
	name, cell = d.at("each", workbook.Value)
	require.NoError(t, d.f.AddComment(name, excelize.Comment{Cell: cell, Author: "June", Text: "June:\nlast year it was 7"}))
	ch = d.only()
	assert.Equal(t, "each", ch.About)
	assert.Equal(t, "last year it was 7", ch.Came)
}

func TestRowsInAnotherOrder(t *testing.T) {
	d := newDesk(t)
	d.write("taps", workbook.Value, 150)
	a, b := d.cells[cellKey{lineKey{1, "taps"}, workbook.Value}], d.cells[cellKey{lineKey{1, "each"}, workbook.Value}]
	for column := range 9 {
		one, _ := excelize.CoordinatesToCellName(column+1, a.row)
		two, _ := excelize.CoordinatesToCellName(column+1, b.row)
		x, err := d.f.GetCellValue("Plan", one, excelize.Options{RawCellValue: true})
		require.NoError(t, err)
		y, err := d.f.GetCellValue("Plan", two, excelize.Options{RawCellValue: true})
		require.NoError(t, err)
		require.NoError(t, d.f.SetCellStr("Plan", one, y))
		require.NoError(t, d.f.SetCellStr("Plan", two, x))
	}
	ch := d.only()
	assert.Equal(t, "taps", ch.About)
	assert.InDelta(t, 150, *ch.Edits[0].Set.Is, 0)
}

func TestWhatIsGoneIsTold(t *testing.T) {
	d := newDesk(t)
	d.write("taps", workbook.Value, nil)
	r := d.back()
	assert.Empty(t, r.Changes)
	assert.Equal(t, []Lost{{"taps", "Taps hung", "the number is gone"}}, r.Lost)
	d = newDesk(t)
	s := d.cells[cellKey{lineKey{1, "taps"}, workbook.Value}]
	require.NoError(t, d.f.RemoveRow("Plan", s.row))
	r = d.back()
	assert.Equal(t, "the row is gone", r.Lost[0].What)
}

// A program that keeps numbers only must not make a change of every line.
func TestWorkingsThatDidNotComeBackAreNoChanges(t *testing.T) {
	d := newDesk(t)
	d.write("taps", workbook.Value, 150)
	for _, name := range d.f.GetSheetList() {
		rows, err := d.f.GetRows(name)
		require.NoError(t, err)
		for i, row := range rows {
			for k := range row {
				cell, _ := excelize.CoordinatesToCellName(k+1, i+1)
				if text, _ := d.f.GetCellFormula(name, cell); text != "" {
					require.NoError(t, d.f.SetCellFormula(name, cell, ""))
				}
			}
		}
	}
	r := d.back()
	require.Len(t, r.Changes, 1, "%+v", r.Changes)
	assert.Equal(t, "taps", r.Changes[0].About)
	require.NotEmpty(t, r.Told)
	assert.Contains(t, r.Told[0].Message, "no working came back")
}

// FuzzCompare puts anything into any cell, as a value and as a formula: reading
// it never panics and never offers an edit that the sheet does not know.
func FuzzCompare(f *testing.F) {
	p, plan := boundText(f, grove)
	var b bytes.Buffer
	require.NoError(f, workbook.Write(&b, workbook.Input{Plans: []workbook.Plan{p}}))
	for _, seed := range []string{"140", "taps*2", "thawbook plan 1 id", "thawbook", "thawbook table 1 fuels value price", "INDEX(fuels_price,MATCH(fuel,fuels_id,0))",
		"SUM(Plan!A1:XFD1048576)", "_x0041_", "1/0", "ROUNDUP(ROUNDUP(ROUNDUP(sap,0),0),0)", "12 gal", "sap", "gas"} {
		f.Add(uint16(1), uint16(40), seed, false)
		f.Add(uint16(2), uint16(300), seed, true)
	}
	f.Fuzz(func(t *testing.T, which, at uint16, text string, working bool) {
		book, _ := guard.Open(b.Bytes())
		s := book.Sheets[int(which)%len(book.Sheets)]
		c := &s.Cells[int(at)%len(s.Cells)]
		if working {
			c.Formula = text
		} else {
			c.Kind, c.Text, c.Formula = guard.Text, text, ""
		}
		w := Find(book)
		if w == nil {
			return
		}
		for _, ch := range w.Compare(1, nil, plan).Changes {
			if ch.Problem == "" && len(ch.Edits) == 0 {
				t.Fatalf("a change that neither can be taken nor says why: %+v", ch)
			}
		}
	})
}
