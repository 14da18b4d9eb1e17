package workbook

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

const smallSheet = `thawbook: 1
title: Small
money: CAD
seasons: 500
seed: 9
chapters:
  - title: Sap
    lines:
      - {id: taps, label: Taps, is: 12, unit: tap, floor: 1, ceiling: 900, note: Buckets., source: our own count}
      - {id: each, label: Sap a tap, guess: {low: 5, likely: 9.25, high: 14}, unit: gal/tap, floor: 0}
      - {id: evenings, label: Evenings, records: [9, 14, 11, 15], unit: evening}
      - {id: fuel, label: Fuel, choose: propane, among: fuels}
      - {id: filter, label: Filter, choose: felt, among: [{id: felt, label: Felt cone}, {id: paper, label: Paper}]}
      - {id: sap, label: Sap, formula: taps * each, unit: gal, headline: {better: more, goal: {at_least: 100}}}
      - {id: cost, label: Cost, formula: 'sap * fuels[fuel].price * (filter == "felt" ? 1 : 2)', unit: $, headline: {better: less}}
      - {id: cold, label: Cold, is: 1, unit: "yes/no"}
      - {id: never, label: Never, formula: cost / (taps - taps), unit: $/tap}
    tables:
      - id: fuels
        label: Fuels
        columns:
          - {id: price, label: Price, unit: $/gal}
          - {id: twice, label: Twice, unit: $/gal, formula: price * 2}
        rows:
          - {id: wood, label: Wood, price: 0}
          - {id: propane, label: Propane, price: {guess: {low: 2, likely: 3, high: 4.5}}, caution: propane}
`

func entry(t *testing.T, ix Index, id string, part Part) Entry {
	for _, e := range ix.Entries {
		if e.ID == id && e.Part == part {
			return e
		}
	}
	require.Fail(t, "no entry", "%s %s", id, part)
	return Entry{}
}

func styleOf(t *testing.T, f *excelize.File, e Entry) *excelize.Style {
	id, err := f.GetCellStyle(e.Sheet, e.Cell)
	require.NoError(t, err)
	s, err := f.GetStyle(id)
	require.NoError(t, err)
	return s
}

func TestInputsAreDistinctAndUnlockedAndTheRestIsLocked(t *testing.T) {
	f := open(t, write(t, Input{Plans: []Plan{plan(t, smallSheet)}}))
	ix := indexOf(t, f)
	for _, e := range ix.Entries {
		if e.Part == Past {
			continue
		}
		s := styleOf(t, f, e)
		isInput := e.Written == "" && !e.Held
		assert.Equal(t, isInput, s.Protection != nil && !s.Protection.Locked, e.ID)
		assert.Equal(t, isInput, len(s.Fill.Color) == 1 && s.Fill.Color[0] == fillInput, e.ID)
	}
	for part, ws := range worksheets(t, write(t, Input{Plans: []Plan{plan(t, smallSheet)}})) {
		require.NotNil(t, ws.Protection, part)
		assert.Equal(t, "true", ws.Protection.Sheet)
		assert.Empty(t, ws.Protection.Password+ws.Protection.Hash, "no password")
	}
}

func TestChoicesHaveListsAndNumbersTheirBounds(t *testing.T) {
	f := open(t, write(t, Input{Plans: []Plan{plan(t, smallSheet)}}))
	ix := indexOf(t, f)
	rules := map[string]*excelize.DataValidation{}
	for _, name := range f.GetSheetList() {
		list, err := f.GetDataValidations(name)
		require.NoError(t, err)
		for _, v := range list {
			for _, cell := range strings.Fields(v.Sqref) {
				rules[name+"!"+cell] = v
			}
		}
	}
	at := func(id string, part Part) *excelize.DataValidation {
		e := entry(t, ix, id, part)
		v := rules[e.Sheet+"!"+e.Cell]
		require.NotNil(t, v, id)
		return v
	}
	assert.Equal(t, "list", at("fuel", Value).Type)
	assert.Equal(t, "fuels_id", at("fuel", Value).Formula1)
	assert.Equal(t, "filter_names", at("filter", Value).Formula1)
	assert.Equal(t, [2]string{"1", "900"}, [2]string{at("taps", Value).Formula1, at("taps", Value).Formula2})
	assert.Equal(t, "0", at("each", Low).Formula1)
	assert.Equal(t, "1E+100", at("each", High).Formula2)
	require.NotNil(t, at("each", Low).Prompt)
	assert.Contains(t, *at("each", Low).Prompt, "1 season in 10 is lower")
}

// Changing a choice in the workbook changes what hangs on it.
func TestChangingTheFuelChangesTheCost(t *testing.T) {
	f := open(t, write(t, Input{Plans: []Plan{plan(t, smallSheet)}}))
	ix := indexOf(t, f)
	cost := entry(t, ix, "cost", Value)
	work := func() float64 {
		x, ok := calculate(f, where{Sheet: cost.Sheet, Cell: cost.Cell})
		require.True(t, ok)
		return x
	}
	assert.InDelta(t, 12*9.25*3, work(), 1e-9)
	set := func(id, to string) {
		e := entry(t, ix, id, Value)
		require.NoError(t, f.SetCellStr(e.Sheet, e.Cell, to))
	}
	set("filter", "paper")
	assert.InDelta(t, 12*9.25*6, work(), 1e-9)
	set("fuel", "wood")
	assert.Zero(t, work())
}

func TestNumberFormatsFollowUnits(t *testing.T) {
	parse := func(text string) units.Unit {
		u, err := units.Parse(text, "USD")
		require.NoError(t, err)
		return u
	}
	for _, test := range []struct {
		unit  string
		exact bool
		x     float64
		want  string
	}{
		{"gal", true, 9.25, "#,##0.00"}, {"gal", true, 12, "#,##0"}, {"gal", false, 26.94, "#,##0.0"}, {"gal", false, 1234.5, "#,##0"},
		{"gal", false, 0.0123, "#,##0.0000"}, {"gal", false, 0, "#,##0"}, {"gal", false, 1e-7, "General"}, {"gal", true, 1e16, "General"},
		{"$", true, 3.5, `"$"#,##0.00;-"$"#,##0.00`}, {"$", true, 300, `"$"#,##0;-"$"#,##0`}, {"$/gal", false, 42.1, `"$"#,##0.00;-"$"#,##0.00`},
		{"$", false, 1240, `"$"#,##0;-"$"#,##0`}, {"°F", false, 219.1, "#,##0.0"}, {"F°", false, 7.1, "#,##0.0"}, {"yes/no", false, 1, `[=1]"yes";[=0]"no";General`},
		{"%", true, 4.5, "#,##0.0"},
	} {
		assert.Equal(t, test.want, format(parse(test.unit), test.exact, test.x), "%v %s", test.x, test.unit)
	}
}

func TestNotesAreCommentsAndSourcesStandWithThem(t *testing.T) {
	f := open(t, write(t, Input{Plans: []Plan{plan(t, smallSheet)}}))
	said := map[string]bool{}
	for _, name := range []string{"Plan", "Tables"} {
		list, err := f.GetComments(name)
		require.NoError(t, err)
		for _, c := range list {
			said[c.Text] = true
		}
	}
	assert.True(t, said["Buckets.\nSource: our own count"], said)
	found := false
	for text := range said {
		found = found || strings.Contains(text, "Burn outdoors") && strings.Contains(text, "CPSC")
	}
	assert.True(t, found, "a caution by its key stands with its text and source")
}

// What comes to no number shows an error there, and what the workbook says of
// goals, seasons and seed is what was reckoned.
func TestRangesStandAsReckoned(t *testing.T) {
	p := plan(t, smallSheet)
	for i, r := range p.Ranges {
		if r != nil {
			r.Low, r.Middle, r.High, r.Mean = float64(i)+0.25, float64(i)+1, float64(i)+2, float64(i)+3
		}
	}
	f := open(t, write(t, Input{Plans: []Plan{p}}))
	rows, err := f.GetRows("Ranges", excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	assert.Contains(t, rows[1][0], "500 drawn seasons, seed 9")
	seen := 0
	for _, r := range rows[3:] {
		if i := p.Bound.Find(at(r, rangeID-1)); i >= 0 {
			seen++
			x, err := strconv.ParseFloat(r[rangeHigh-1], 64)
			require.NoError(t, err)
			assert.Equal(t, float64(i)+2, x)
		}
	}
	assert.Equal(t, 7, seen, "guesses, records and formulas that came to numbers")
	never := entry(t, indexOf(t, f), "never", Value)
	text, err := f.GetCellValue(never.Sheet, never.Cell)
	require.NoError(t, err)
	assert.Equal(t, "#N/A", text)
	assert.Empty(t, never.Sent)
}

// Several plans live beside each other, each with cells of its own, and each
// follows its own changes.
func TestSeveralPlansStayApart(t *testing.T) {
	in := three(t)
	f := open(t, write(t, in))
	ix := indexOf(t, f)
	require.Len(t, ix.Plans, 3)
	for k, p := range in.Plans {
		assert.Equal(t, p.Source, ix.Plans[k].Source)
		a := answersFor(t, p, only(ix, k+1), 2, uint64(k))
		agree(t, f, a, a.Cases[0])
		for _, c := range a.Cases[1:] {
			for _, s := range c.Set {
				require.NoError(t, f.SetCellValue(a.Inputs[s.At].Sheet, a.Inputs[s.At].Cell, s.Value))
			}
			agree(t, f, a, c)
			f = open(t, write(t, in))
		}
	}
	assert.Equal(t, []string{"Start here", "Compare", "Plan", "Tables", "Plan 2", "Tables 2", "Plan 3", "Tables 3", "Lay in",
		"Ranges", "Records", "Steps", "Ranges 2", "Records 2", "Steps 2", "Ranges 3", "Records 3", "Steps 3", indexSheet}, f.GetSheetList())
	shown, err := f.GetSheetVisible(indexSheet)
	require.NoError(t, err)
	assert.False(t, shown)
}

// only is an index of one plan.
func only(ix Index, plan int) Index {
	out := ix
	out.Entries = nil
	for _, e := range ix.Entries {
		if e.Plan == plan {
			out.Entries = append(out.Entries, e)
		}
	}
	return out
}

// A formula with a part that cannot be spelt goes out as a number and says so,
// and what hangs on it stays alive.
func TestWhatCannotBeLiveStandsStillAndSaysSo(t *testing.T) {
	p := plan(t, smallSheet)
	sap := p.Bound.Find("sap")
	p.Likely[sap] = 77 // what no workbook would work out
	cost := p.Bound.Find("cost")
	p.Likely[cost] = 77 * 3
	f := open(t, write(t, Input{Plans: []Plan{p}}))
	ix := indexOf(t, f)
	e := entry(t, ix, "sap", Value)
	assert.True(t, e.Held)
	assert.Empty(t, e.Written)
	assert.Equal(t, "77", e.Sent)
	formula, err := f.GetCellFormula(e.Sheet, e.Cell)
	require.NoError(t, err)
	assert.Empty(t, formula)
	assert.NotEmpty(t, entry(t, ix, "cost", Value).Written)
	rows, err := f.GetRows("Start here")
	require.NoError(t, err)
	text := ""
	for _, r := range rows {
		text += strings.Join(r, " ") + "\n"
	}
	assert.Contains(t, text, "Sap: a workbook works it out to 111. Its number is the one sent")
}

// Lines that are wrong go out as such; the rest goes out alive.
func TestBrokenLinesGoOutAsBroken(t *testing.T) {
	doc, _ := sheet.Parse("t.yaml", []byte("thawbook: 1\nchapters:\n  - title: A\n    lines:\n      - {id: a, label: A, is: 2, unit: gal}\n      - {id: b, label: B, formula: a + nothing, unit: gal}\n      - {id: c, label: C, formula: b * 2, unit: gal}\n      - {id: d, label: D, formula: a * 2, unit: gal}\n"))
	resolved, _ := sheet.Resolve(doc, nil)
	p := planFrom(bind(resolved), "t.yaml", doc.Source())
	f := open(t, write(t, Input{Plans: []Plan{p}}))
	ids := map[string]bool{}
	for _, e := range indexOf(t, f).Entries {
		ids[e.ID] = true
	}
	assert.Equal(t, map[string]bool{"a": true, "d": true}, ids)
}

func TestWriteRefusesWhatCannotGoOut(t *testing.T) {
	p := plan(t, smallSheet)
	for name, in := range map[string]Input{
		"nothing":    {},
		"too many":   {Plans: make([]Plan, MaxPlans+1)},
		"no sheet":   {Plans: []Plan{{}}},
		"no numbers": {Plans: []Plan{{Bound: p.Bound, Likely: p.Likely}}},
	} {
		assert.Error(t, Write(&strings.Builder{}, in), name)
	}
}
