package workbook

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"io"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// parts are the parts of a workbook by name.
func parts(t *testing.T, file []byte) (map[string][]byte, []string) {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	require.NoError(t, err)
	out, order := map[string][]byte{}, []string{}
	for _, f := range z.File {
		r, err := f.Open()
		require.NoError(t, err)
		text, err := io.ReadAll(r)
		require.NoError(t, err)
		require.NotContains(t, out, f.Name, "a part stands twice")
		out[f.Name], order = text, append(order, f.Name)
	}
	return out, order
}

// everyWorkbook is each scenario alone, three together with all that may go
// along, and a sheet of hostile texts.
func everyWorkbook(t *testing.T) map[string][]byte {
	out := map[string][]byte{"three": write(t, three(t)), "hostile": write(t, Input{Plans: []Plan{plan(t, hostileSheet())}})}
	for _, file := range scenarios(t) {
		out[filepath.Base(file)] = write(t, Input{Plans: []Plan{scenario(t, file)}})
	}
	return out
}

// three is three scenarios of one sheet with a comparison and things to lay in.
func three(t testing.TB) Input {
	in := Input{LayIn: &LayIn{Chance: "9 seasons of 10", Total: "$48", Needs: []Need{{Label: "=Jars", Unit: "jar", Need: 130, OnHand: 20, Get: 120, Cost: "$48"}}}, Made: "2026-11-25T10:00:00Z"}
	for _, name := range []string{"heron-ridge-pallets", "heron-ridge-cordwood", "heron-ridge-propane"} {
		in.Plans = append(in.Plans, scenario(t, "../../scenarios/"+name+".yaml"))
	}
	in.Compare = &Comparison{Lines: []Compared{{ID: "hours", Label: "Hours in all", Unit: "h",
		Differences: []*Difference{{Low: -9, Middle: 1, High: 12, Ahead: "4 seasons of 10"}, nil}}}}
	return in
}

func TestEveryPartIsWellFormed(t *testing.T) {
	for name, file := range everyWorkbook(t) {
		all, order := parts(t, file)
		require.Equal(t, "[Content_Types].xml", order[0], "programs that read as they receive want it first")
		for part, text := range all {
			d := xml.NewDecoder(bytes.NewReader(text))
			depth := 0
			for {
				token, err := d.Token()
				if err == io.EOF {
					break
				}
				require.NoError(t, err, "%s: %s", name, part)
				switch token.(type) {
				case xml.StartElement:
					depth++
				case xml.EndElement:
					depth--
				}
			}
			require.Zero(t, depth, part)
			require.NotContains(t, string(text), errorMark, "%s: %s", name, part)
			require.NotContains(t, string(text), "\uFFFD", "%s: %s holds what no XML may", name, part)
		}
	}
}

// ECMA-376 part 2: every part has a type, every relationship inside leads to a
// part, every part but the roots is led to, and nothing leads outside.
func TestPartsHangTogether(t *testing.T) {
	for name, file := range everyWorkbook(t) {
		all, _ := parts(t, file)
		types := contentTypes(t, all["[Content_Types].xml"])
		led := map[string]bool{"[Content_Types].xml": true}
		for part := range all {
			if part != "[Content_Types].xml" {
				assert.True(t, types.of(part), "%s: %s has no type", name, part)
			}
			if !strings.HasSuffix(part, ".rels") {
				continue
			}
			led[part] = true
			base := path.Dir(path.Dir(part))
			for _, r := range relationships(t, all[part]) {
				require.Empty(t, r.TargetMode, "%s: %s reaches outside", name, part)
				target := path.Join(base, r.Target)
				if strings.HasPrefix(r.Target, "/") {
					target = strings.TrimPrefix(r.Target, "/")
				}
				assert.Contains(t, all, target, "%s: %s leads nowhere", name, part)
				led[target] = true
			}
		}
		for part := range all {
			assert.True(t, led[part], "%s: nothing leads to %s", name, part)
			assert.NotRegexp(t, `(?i)vba|macro|externallink|activex|embed`, part)
		}
		for override := range types.overrides {
			assert.Contains(t, all, override, "%s: a type for a part that is not there", name)
		}
	}
}

type typed struct{ defaults, overrides map[string]bool }

func (c typed) of(part string) bool {
	return c.overrides[part] || c.defaults[strings.TrimPrefix(path.Ext(part), ".")]
}

func contentTypes(t *testing.T, text []byte) typed {
	var doc struct {
		Default []struct {
			Extension string `xml:",attr"`
		}
		Override []struct {
			PartName string `xml:",attr"`
		}
	}
	require.NoError(t, xml.Unmarshal(text, &doc))
	out := typed{map[string]bool{}, map[string]bool{}}
	for _, d := range doc.Default {
		out.defaults[d.Extension] = true
	}
	for _, o := range doc.Override {
		name := strings.TrimPrefix(o.PartName, "/")
		require.False(t, out.overrides[name], "%s has two types", name)
		out.overrides[name] = true
	}
	return out
}

type relationship struct {
	ID         string `xml:"Id,attr"`
	Target     string `xml:",attr"`
	TargetMode string `xml:",attr"`
}

func relationships(t *testing.T, text []byte) []relationship {
	var doc struct{ Relationship []relationship }
	require.NoError(t, xml.Unmarshal(text, &doc))
	seen := map[string]bool{}
	for _, r := range doc.Relationship {
		require.False(t, seen[r.ID], "an id stands twice")
		seen[r.ID] = true
	}
	return doc.Relationship
}

// worksheetOrder is the order that CT_Worksheet has its parts in (ECMA-376 part
// 1, 18.3.1.99).
var worksheetOrder = strings.Fields(`sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges
	scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr conditionalFormatting dataValidations hyperlinks
	printOptions pageMargins pageSetup headerFooter rowBreaks colBreaks customProperties cellWatches ignoredErrors smartTags drawing
	legacyDrawing legacyDrawingHF picture oleObjects controls webPublishItems tableParts extLst`)

type worksheet struct {
	XMLName   xml.Name
	Dimension struct {
		Ref string `xml:"ref,attr"`
	} `xml:"dimension"`
	Protection *struct {
		Sheet    string `xml:"sheet,attr"`
		Password string `xml:"password,attr"`
		Hash     string `xml:"hashValue,attr"`
	} `xml:"sheetProtection"`
	Rows []struct {
		R      int         `xml:"r,attr"`
		Ht     float64     `xml:"ht,attr"`
		Hidden string      `xml:"hidden,attr"`
		Cells  []sheetCell `xml:"c"`
	} `xml:"sheetData>row"`
	Merges []struct {
		Ref string `xml:"ref,attr"`
	} `xml:"mergeCells>mergeCell"`
	Validations []struct {
		Sqref    string `xml:"sqref,attr"`
		Type     string `xml:"type,attr"`
		Error    string `xml:"error,attr"`
		Title    string `xml:"errorTitle,attr"`
		Prompt   string `xml:"prompt,attr"`
		Formula1 string `xml:"formula1"`
		Formula2 string `xml:"formula2"`
	} `xml:"dataValidations>dataValidation"`
}

type sheetCell struct {
	R  string  `xml:"r,attr"`
	S  int     `xml:"s,attr"`
	T  string  `xml:"t,attr"`
	F  *string `xml:"f"`
	V  *string `xml:"v"`
	Is *struct {
		T string `xml:"t"`
	} `xml:"is"`
}

func worksheets(t *testing.T, file []byte) map[string]worksheet {
	all, _ := parts(t, file)
	out := map[string]worksheet{}
	for name, text := range all {
		if strings.HasPrefix(name, "xl/worksheets/sheet") {
			var ws worksheet
			require.NoError(t, xml.Unmarshal(text, &ws))
			out[name] = ws
			elementsInOrder(t, name, text)
		}
	}
	require.NotEmpty(t, out)
	return out
}

func elementsInOrder(t *testing.T, name string, text []byte) {
	d := xml.NewDecoder(bytes.NewReader(text))
	depth, last := 0, -1
	for {
		token, err := d.Token()
		if err == io.EOF {
			return
		}
		require.NoError(t, err)
		switch e := token.(type) {
		case xml.StartElement:
			if depth++; depth == 2 {
				at := slices.Index(worksheetOrder, e.Name.Local)
				require.GreaterOrEqual(t, at, 0, "%s: %s has no place in a worksheet", name, e.Name.Local)
				require.GreaterOrEqual(t, at, last, "%s: %s stands too late", name, e.Name.Local)
				last = at
			}
		case xml.EndElement:
			depth--
		}
	}
}

func TestCellsKeepToTheStandard(t *testing.T) {
	for name, file := range everyWorkbook(t) {
		all, _ := parts(t, file)
		xfs := countOf(t, all["xl/styles.xml"], "cellXfs")
		for part, ws := range worksheets(t, file) {
			about := name + ": " + part
			lastRow := 0
			seen := map[string]bool{}
			for _, r := range ws.Rows {
				require.Greater(t, r.R, lastRow, about)
				lastRow = r.R
				require.LessOrEqual(t, r.Ht, 409.0, "%s: the highest a row may be", about)
				lastColumn := 0
				for _, c := range r.Cells {
					column, row, err := excelize.CellNameToCoordinates(c.R)
					require.NoError(t, err, about)
					require.True(t, row == r.R && column > lastColumn && !seen[c.R], "%s %s", about, c.R)
					lastColumn, seen[c.R] = column, true
					require.Less(t, c.S, xfs, "%s %s has no such style", about, c.R)
					checkCell(t, about+" "+c.R, c)
				}
			}
			checkRanges(t, about, ws)
		}
	}
}

// checkCell: every formula carries a value of its type, every text is a text.
func checkCell(t *testing.T, about string, c sheetCell) {
	t.Helper()
	switch {
	case c.F != nil:
		require.NotNil(t, c.V, "%s carries no value", about)
		require.LessOrEqual(t, len(*c.F), 8192, about)
		require.False(t, strings.HasPrefix(*c.F, "="), about)
		switch c.T {
		case "":
			_, err := strconv.ParseFloat(*c.V, 64)
			require.NoError(t, err, about)
		case "e":
			require.Equal(t, "#N/A", *c.V, about)
		case "str":
			// A name, or the label that a choice stands for.
			require.Regexp(t, `^INDEX\(|^[a-z_0-9]+$`, *c.F, about)
		default:
			require.Fail(t, "a formula of type "+c.T, about)
		}
	case c.T == "inlineStr":
		require.NotNil(t, c.Is, about)
		require.Nil(t, c.V, about)
		require.LessOrEqual(t, len([]rune(c.Is.T)), 32767, about)
	case c.V != nil:
		require.Equal(t, "", c.T, about)
		_, err := strconv.ParseFloat(*c.V, 64)
		require.NoError(t, err, about)
	}
}

func checkRanges(t *testing.T, about string, ws worksheet) {
	covered := map[string]bool{}
	for _, m := range ws.Merges {
		from, to, _ := strings.Cut(m.Ref, ":")
		c1, r1, err := excelize.CellNameToCoordinates(from)
		require.NoError(t, err, about)
		c2, r2, err := excelize.CellNameToCoordinates(to)
		require.NoError(t, err, about)
		for c := c1; c <= c2; c++ {
			for r := r1; r <= r2; r++ {
				at := place{c, r}.String()
				require.False(t, covered[at], "%s: merged twice at %s", about, at)
				covered[at] = true
			}
		}
	}
	checked := map[string]bool{}
	for _, v := range ws.Validations {
		// 18.3.1.32: 255 characters of message, 32 of title.
		require.LessOrEqual(t, len([]rune(v.Error)), 255, about)
		require.LessOrEqual(t, len([]rune(v.Prompt)), 255, about)
		require.LessOrEqual(t, len([]rune(v.Title)), 32, about)
		for _, cell := range strings.Fields(v.Sqref) {
			require.False(t, checked[cell], "%s: %s is checked twice", about, cell)
			checked[cell] = true
		}
	}
}

func countOf(t *testing.T, text []byte, element string) int {
	found := regexp.MustCompile(`<` + element + ` count="(\d+)"`).FindSubmatch(text)
	require.NotNil(t, found, element)
	n, err := strconv.Atoi(string(found[1]))
	require.NoError(t, err)
	return n
}

// Names are valid, stand once, and mean cells that are there.
func TestDefinedNamesAreValid(t *testing.T) {
	name := regexp.MustCompile(`^[A-Za-z_][A-Za-z0-9_.]{0,254}$`)
	address := regexp.MustCompile(`(?i)^([a-z]{1,3}[0-9]+|r[0-9]*(c[0-9]*)?|c[0-9]*|true|false)$`)
	for about, file := range everyWorkbook(t) {
		f := open(t, file)
		seen := map[string]bool{}
		for _, n := range f.GetDefinedName() {
			if n.Name == "_xlnm.Print_Titles" {
				continue
			}
			require.Regexp(t, name, n.Name, about)
			require.NotRegexp(t, address, n.Name, about)
			require.False(t, seen[strings.ToLower(n.Name)], "%s: %s stands twice", about, n.Name)
			seen[strings.ToLower(n.Name)] = true
			sheet, cells, ok := strings.Cut(n.RefersTo, "!")
			require.True(t, ok, n.RefersTo)
			index, err := f.GetSheetIndex(strings.Trim(sheet, "'"))
			require.NoError(t, err)
			require.GreaterOrEqual(t, index, 0, "%s: %s", about, n.RefersTo)
			require.Regexp(t, `^\$[A-Z]{1,3}\$[0-9]+(:\$[A-Z]{1,3}\$[0-9]+)?$`, cells)
		}
		for _, e := range indexOf(t, f).Entries {
			require.True(t, seen[e.Name], "%s: the index has %s", about, e.Name)
		}
	}
}

// Two workbooks of one input are the same byte for byte.
func TestWritingIsRepeatable(t *testing.T) {
	in := three(t)
	first := write(t, in)
	for range 3 {
		require.True(t, bytes.Equal(first, write(t, in)))
	}
}
