package workbook

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// sheetWriter writes grids as sheets, row by row.
type sheetWriter struct {
	f      *excelize.File
	styles styles
	money  string
	wrong  *int // the style of an input that cannot be, once made
}

func (s *sheetWriter) sheet(g *grid) error {
	if err := s.before(g); err != nil {
		return err
	}
	sw, err := s.f.NewStreamWriter(g.name)
	if err != nil {
		return err
	}
	for i, wide := range g.widths {
		if err := sw.SetColWidth(i+1, i+1, wide); err != nil {
			return err
		}
	}
	if p := panes(g); p != nil {
		if err := sw.SetPanes(p); err != nil {
			return err
		}
	}
	for i, r := range g.rows {
		r.height = g.high(r)
		if err := s.row(sw, i+1, r); err != nil {
			return err
		}
	}
	if err := s.beside(g); err != nil {
		return err
	}
	return sw.Flush()
}

// before sets what must stand in the file ahead of the cells.
func (s *sheetWriter) before(g *grid) error {
	yes := true
	if err := s.f.SetSheetProps(g.name, &excelize.SheetPropsOptions{FitToPage: &yes}); err != nil {
		return err
	}
	wide := 1
	for _, r := range g.rows {
		wide = max(wide, len(r.cells))
	}
	if err := s.f.SetSheetDimension(g.name, "A1:"+place{wide, max(1, len(g.rows))}.String()); err != nil {
		return err
	}
	grey := false
	return s.f.SetSheetView(g.name, 0, &excelize.ViewOptions{ShowGridLines: &grey})
}

func panes(g *grid) *excelize.Panes {
	if g.freezeRows == 0 && g.freezeColumns == 0 {
		return nil
	}
	p := &excelize.Panes{Freeze: true, XSplit: g.freezeColumns, YSplit: g.freezeRows, ActivePane: "bottomRight",
		TopLeftCell: place{g.freezeColumns + 1, g.freezeRows + 1}.String()}
	switch {
	case g.freezeColumns == 0:
		p.ActivePane = "bottomLeft"
	case g.freezeRows == 0:
		p.ActivePane = "topRight"
	}
	return p
}

func (s *sheetWriter) row(sw *excelize.StreamWriter, number int, r row) error {
	values := make([]any, len(r.cells))
	for i, c := range r.cells {
		id, err := s.styles.id(c.style)
		if err != nil {
			return err
		}
		values[i] = excelize.Cell{StyleID: id, Formula: c.formula, Value: written(c)}
	}
	if r.merge > 1 {
		if err := sw.MergeCell(place{1, number}.String(), place{r.merge, number}.String()); err != nil {
			return err
		}
	}
	return sw.SetRow(place{1, number}.String(), values, excelize.RowOpts{Height: r.height, Hidden: r.hidden})
}

// written is a cell's value in the library's terms. Text is handed over as text
// and never as a formula, whatever it looks like.
func written(c cell) any {
	switch v := c.value.(type) {
	case failed:
		if c.formula == "" {
			return "no number"
		}
		return errorMark + "#N/A"
	case string:
		if v == "" {
			return nil
		}
		return plainText(v)
	}
	return c.value
}

// beside sets what stands in the file behind the cells or in parts of its own.
func (s *sheetWriter) beside(g *grid) error {
	for _, c := range g.comments {
		if err := s.f.AddComment(g.name, remark(c)); err != nil {
			return err
		}
	}
	if err := s.checks(g); err != nil {
		return err
	}
	for _, p := range g.charts {
		if err := s.f.AddChart(g.name, p.at.String(), draw(p)); err != nil {
			return err
		}
	}
	if err := s.page(g); err != nil {
		return err
	}
	if g.open {
		return nil
	}
	return s.f.ProtectSheet(g.name, &excelize.SheetProtectionOptions{SelectLockedCells: true, SelectUnlockedCells: true, FormatCells: true,
		FormatColumns: true, FormatRows: true, InsertColumns: true, InsertRows: true, Sort: true, AutoFilter: true, EditObjects: true})
}

// mostComment is how many characters of a comment are shown.
const mostComment = 2000

func remark(c comment) excelize.Comment {
	text := []rune(plainText(c.text))
	if len(text) > mostComment {
		text = append(text[:mostComment], '…')
	}
	out := excelize.Comment{Cell: c.place.String(), Author: "Thawbook", Text: escaped(string(text))}
	out.Width = 300
	out.Height = uint(30 + 18*linesOf(string(text), 44))
	return out
}

// escaped keeps a text that looks like one of the standard's own escapes, such
// as _x0041_, from being read as one.
func escaped(text string) string {
	var out strings.Builder
	for i := range len(text) {
		if text[i] == '_' && isEscape(text[i:]) {
			out.WriteString("_x005F")
		}
		out.WriteByte(text[i])
	}
	return out.String()
}

func isEscape(text string) bool {
	if len(text) < 7 || text[1] != 'x' || text[6] != '_' {
		return false
	}
	_, err := strconv.ParseUint(text[2:6], 16, 16)
	return err == nil
}

// paper is letter where dollars of North America are spent, A4 elsewhere.
func (s *sheetWriter) paper() int {
	if s.money == "USD" || s.money == "CAD" {
		return 1
	}
	return 9
}

func (s *sheetWriter) page(g *grid) error {
	if g.hidden {
		return nil
	}
	way, wide, high, size := "portrait", 1, 0, s.paper()
	if g.landscape {
		way = "landscape"
	}
	if err := s.f.SetPageLayout(g.name, &excelize.PageLayoutOptions{Orientation: &way, FitToWidth: &wide, FitToHeight: &high, Size: &size}); err != nil {
		return err
	}
	return s.f.SetHeaderFooter(g.name, &excelize.HeaderFooterOptions{OddFooter: "&L&A&R&P / &N"})
}

// draw is a picture in the library's terms.
func draw(p picture) *excelize.Chart {
	no := false
	ink := excelize.Font{Color: inkDark, Size: 9, Family: fontName}
	c := &excelize.Chart{Type: excelize.Bar, XAxis: excelize.ChartAxis{Font: ink}, YAxis: excelize.ChartAxis{Font: ink, MajorGridLines: true}, VaryColors: &no, Dimension: excelize.ChartDimension{Width: p.width, Height: p.height},
		Title:  excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: plainText(p.title), Font: &excelize.Font{Color: inkDark, Size: 11, Bold: true, Family: fontName}}}},
		Legend: excelize.ChartLegend{Position: "none"}, Format: excelize.GraphicOptions{AltText: plainText(p.title)}}
	switch {
	case p.upright:
		c.Type = excelize.Col
	case p.stacked:
		c.Type = excelize.BarStacked
		c.XAxis.ReverseOrder = true // the first outcome on top, as in the list
		c.YAxis.NumFmt = excelize.ChartNumFmt{CustomNumFmt: "0%"}
	}
	if p.fromNothing {
		nothing := 0.0
		c.YAxis.Minimum = &nothing
	}
	for _, one := range p.series {
		fill := excelize.Fill{Type: "pattern"}
		if one.color != "" {
			fill = filled(one.color)
		}
		c.Series = append(c.Series, excelize.ChartSeries{Name: one.name, Categories: p.categories, Values: one.values, Fill: fill})
	}
	return c
}

// boundsText says what a number may be.
func boundsText(low, high *float64) string {
	show := func(x *float64) string { return strconv.FormatFloat(*x, 'g', -1, 64) }
	switch {
	case low != nil && high != nil:
		return fmt.Sprintf("A number from %s to %s is wanted here.", show(low), show(high))
	case low != nil:
		return fmt.Sprintf("A number of %s or more is wanted here.", show(low))
	case high != nil:
		return fmt.Sprintf("A number of %s or less is wanted here.", show(high))
	}
	return "A number is wanted here."
}
