package workbook

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Write writes a workbook that still calculates. Every formula is worked once on
// the way: its cell carries the number it comes to, and one that would not come
// to what its line came to goes out as a number and says so. The same input gives
// the same bytes. The error says what about the input cannot go out, or is w's.
func Write(w io.Writer, in Input) error {
	if len(in.Plans) == 0 || len(in.Plans) > MaxPlans {
		return fmt.Errorf("a workbook holds 1 to %d plans, not %d", MaxPlans, len(in.Plans))
	}
	for _, p := range in.Plans {
		if p.Bound == nil || len(p.Likely) != len(p.Bound.Slots) || len(p.Ranges) != len(p.Bound.Slots) {
			return errors.New("a plan lacks numbers for some of its lines")
		}
	}
	b := layOut(in)
	return b.write(w)
}

// layOut puts every sheet together.
func layOut(in Input) *builder {
	b := &builder{in: in, namer: newNamer(), index: Index{Version: Version, Money: in.Plans[0].Bound.Sheet.Money}}
	var after []*grid
	for k, p := range in.Plans {
		pb := newPlanBuilder(b, p, k+1)
		b.plans = append(b.plans, pb)
		b.index.Plans = append(b.index.Plans, Sent{File: p.File, Title: p.Bound.Sheet.Title, Source: p.Source, Seasons: p.Seasons, Seed: p.Seed})
		// The plan's choices show labels that stand on the other two.
		pb.layTables()
		pb.layRecords()
		pb.layPlan()
		pb.laySteps()
		b.grids = append(b.grids, pb.plan)
		if len(pb.tables.rows) > 0 {
			b.grids = append(b.grids, pb.tables)
		}
		after = append(after, pb.layRanges())
		if len(pb.records.widths) > 0 {
			after = append(after, pb.records)
		}
		if len(pb.steps) > 0 {
			after = append(after, pb.stepsGrid)
		}
	}
	front := []*grid{b.layCover()}
	if len(b.plans) > 1 {
		front = append(front, b.layCompare())
	}
	if in.LayIn != nil {
		after = append([]*grid{b.layLayIn()}, after...)
	}
	b.grids = append(append(front, b.grids...), after...)
	return b
}

func (b *builder) write(w io.Writer) error {
	f := excelize.NewFile()
	defer f.Close()
	f.SetZipWriter(newPacker)
	if err := f.SetDefaultFont(fontName); err != nil {
		return err
	}
	s := &sheetWriter{f: f, styles: styles{f: f, made: map[style]int{}}, money: b.index.Money}
	index, err := b.indexGrid()
	if err != nil {
		return err
	}
	all := append(b.grids, index)
	for i, g := range all {
		name := g.name
		if i == 0 {
			err = f.SetSheetName("Sheet1", name)
		} else {
			_, err = f.NewSheet(name)
		}
		if err != nil {
			return err
		}
	}
	// Before any sheet has its cells: the library reads all of them for this.
	if err := f.SetSheetVisible(index.name, false, true); err != nil {
		return err
	}
	for _, g := range all {
		if err := s.sheet(g); err != nil {
			return fmt.Errorf("sheet %q: %w", g.name, err)
		}
	}
	if err := b.writeNames(f); err != nil {
		return err
	}
	if err := b.writeProperties(f); err != nil {
		return err
	}
	_, err = f.WriteTo(w)
	return err
}

// indexGrid is the hidden sheet.
func (b *builder) indexGrid() (*grid, error) {
	rows, err := b.index.rows()
	if err != nil {
		return nil, err
	}
	g := &grid{name: indexSheet, hidden: true}
	for _, r := range rows {
		cells := make([]cell, len(r))
		for i, text := range r {
			cells[i] = cell{value: text, style: style{format: "@"}}
		}
		g.add(cells...)
	}
	b.name(indexName, g, place{1, 1}, place{1, 1})
	return g, nil
}

func (b *builder) writeNames(f *excelize.File) error {
	for _, n := range b.names {
		if err := f.SetDefinedName(&excelize.DefinedName{Name: n.name, RefersTo: address(n.sheet, n.from, n.to)}); err != nil {
			return fmt.Errorf("name %q: %w", n.name, err)
		}
	}
	for _, g := range b.grids {
		if g.repeat == 0 {
			continue
		}
		rows := strings.TrimSuffix(address(g.name, place{1, 1}, place{1, 1}), "$A$1") + fmt.Sprintf("$%d:$%d", g.repeat, g.repeat)
		if err := f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: rows, Scope: g.name}); err != nil {
			return err
		}
	}
	return nil
}

func (b *builder) writeProperties(f *excelize.File) error {
	doc := &excelize.DocProperties{Creator: "Thawbook", LastModifiedBy: "Thawbook", Title: plainText(b.plans[0].p.Bound.Sheet.Title), Created: b.in.Made, Modified: b.in.Made}
	if err := f.SetDocProps(doc); err != nil {
		return err
	}
	if err := f.SetAppProps(&excelize.AppProperties{Application: "Thawbook"}); err != nil {
		return err
	}
	yes := true
	// Programs that calculate work everything once when they open it, so that
	// small differences between them do not linger.
	return f.SetCalcProps(&excelize.CalcPropsOptions{FullCalcOnLoad: &yes})
}
