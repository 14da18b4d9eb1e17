package guard_test

import (
	"archive/zip"
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"thawbook/engine/diag"
	"thawbook/engine/workbook/guard"
)

const (
	relTypes = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/"
	rootRels = `<Relationships><Relationship Id="rId1" Type="` + relTypes + `officeDocument" Target="xl/workbook.xml"/></Relationships>`
	bookRels = `<Relationships><Relationship Id="rId1" Type="` + relTypes + `worksheet" Target="worksheets/sheet1.xml"/>` +
		`<Relationship Id="rId2" Type="` + relTypes + `sharedStrings" Target="/xl/sharedStrings.xml"/>` +
		`<Relationship Id="rId3" Type="` + relTypes + `styles" Target="styles.xml"/></Relationships>`
	bookXML = `<workbook xmlns:r="r"><sheets><sheet name="Plan" sheetId="1" r:id="rId1"/></sheets>` +
		`<definedNames><definedName name="taps">Plan!$B$2</definedName><definedName name="here" localSheetId="0">Plan!$A$1</definedName></definedNames></workbook>`
)

// zipped is a small workbook with the parts given in place of its own.
func zipped(t testing.TB, parts map[string]string) []byte {
	all := map[string]string{"[Content_Types].xml": "<Types/>", "_rels/.rels": rootRels, "xl/_rels/workbook.xml.rels": bookRels, "xl/workbook.xml": bookXML,
		"xl/worksheets/sheet1.xml": sheetXML(`<row r="1"><c r="A1" t="inlineStr"><is><t>Taps</t></is></c></row>`)}
	for name, text := range parts {
		all[name] = text
	}
	var buf bytes.Buffer
	w := zip.NewWriter(&buf)
	for name, text := range all {
		if text == "" {
			continue
		}
		f, err := w.Create(name)
		require.NoError(t, err)
		_, err = f.Write([]byte(text))
		require.NoError(t, err)
	}
	require.NoError(t, w.Close())
	return buf.Bytes()
}

func sheetXML(rows string) string {
	return `<?xml version="1.0"?><worksheet xmlns="x"><sheetData>` + rows + `</sheetData></worksheet>`
}

func withCells(t testing.TB, cells string) *guard.Sheet {
	b, list := guard.Open(zipped(t, map[string]string{"xl/worksheets/sheet1.xml": sheetXML(cells),
		"xl/sharedStrings.xml": `<sst><si><t>one</t></si><si><r><t>two </t></r><r><rPr/><t>runs</t></r><rPh><t>aside</t></rPh></si><si><t>a_x000D_b_x00</t></si></sst>`,
		"xl/styles.xml":        `<styleSheet><numFmts><numFmt numFmtId="164" formatCode="yyyy\-mm\-dd"/><numFmt numFmtId="165" formatCode="0.0&quot; %&quot;"/><numFmt numFmtId="166" formatCode="&quot;$&quot;#,##0"/></numFmts><cellStyleXfs><xf numFmtId="9"/></cellStyleXfs><cellXfs><xf numFmtId="0"/><xf numFmtId="9"/><xf numFmtId="164"/><xf numFmtId="165"/><xf numFmtId="166"/><xf numFmtId="14"/></cellXfs></styleSheet>`}))
	require.Empty(t, list)
	return b.Sheets[0]
}

func TestCellsOfEveryKind(t *testing.T) {
	s := withCells(t, `<row r="2"><c r="A2" t="s"><v>0</v></c><c r="B2" t="s"><v>1</v></c><c t="s"><v>2</v></c><c r="D2"><v>1.5e3</v></c>`+
		`<c r="E2" t="b"><v>1</v></c><c r="F2" t="e"><v>#DIV/0!</v></c><c r="G2" t="str"><f>A2&amp;"x"</f><v>onex</v></c><c r="H2" s="1"><v>0.05</v></c>`+
		`<c r="I2" s="2"><v>43525</v></c><c r="J2" s="3"><v>5</v></c><c r="K2" s="4"><v>5</v></c><c r="L2"><f>1+1</f></c><c r="M2" t="s"><v>99</v></c><c r="N2"><v>NaN</v></c><c r="O2"/></row>`+
		`<row><c><v>7</v></c></row>`)
	for column, want := range map[int]guard.Cell{
		1: {Kind: guard.Text, Text: "one"}, 2: {Kind: guard.Text, Text: "two runs"}, 3: {Kind: guard.Text, Text: "a\rb_x00"}, 4: {Kind: guard.Number, Number: 1500},
		5: {Kind: guard.Truth, Number: 1}, 6: {Kind: guard.Fault, Text: "#DIV/0!"}, 7: {Kind: guard.Text, Text: "onex", Formula: `A2&"x"`},
		8: {Kind: guard.Number, Number: 0.05, Shown: guard.Percent}, 9: {Kind: guard.Number, Number: 43525, Shown: guard.Date},
		10: {Kind: guard.Number, Number: 5}, 11: {Kind: guard.Number, Number: 5, Shown: guard.Money}, 12: {Formula: "1+1"}, 13: {}, 14: {}, 15: {},
	} {
		want.Row, want.Column = 2, column
		assert.Equal(t, want, s.At(2, column))
	}
	assert.Equal(t, guard.Cell{Row: 3, Column: 1, Kind: guard.Number, Number: 7}, s.At(3, 1), "rows and cells without addresses follow each other")
	assert.Len(t, s.Cells, 13)
}

func TestSharedFormulas(t *testing.T) {
	s := withCells(t, `<row r="1"><c r="A1"><f t="shared" ref="A1:A3" si="0">B1*$C$1</f><v>1</v></c></row><row r="2"><c r="A2"><f t="shared" si="0"/><v>2</v></c></row>`+
		`<row r="3"><c r="A3"><f t="shared" si="7"/><v>3</v></c></row>`)
	assert.Equal(t, "B1*$C$1", s.At(1, 1).Formula)
	assert.Equal(t, "B2*$C$1", s.At(2, 1).Formula)
	assert.Empty(t, s.At(3, 1).Formula, "what is shared with nobody")
	assert.InDelta(t, 3, s.At(3, 1).Number, 0)
}

func TestNamesSheetsAndRemarks(t *testing.T) {
	f := excelize.NewFile()
	require.NoError(t, f.SetCellStr("Sheet1", "B2", "here"))
	_, err := f.NewSheet("Second one")
	require.NoError(t, err)
	require.NoError(t, f.SetSheetVisible("Second one", false))
	require.NoError(t, f.SetDefinedName(&excelize.DefinedName{Name: "taps", RefersTo: "'Second one'!$B$2"}))
	require.NoError(t, f.AddComment("Sheet1", excelize.Comment{Cell: "B2", Author: "Ann", Paragraph: []excelize.RichTextRun{{Text: "is it "}, {Text: "so?"}}}))
	buf, err := f.WriteToBuffer()
	require.NoError(t, err)
	b, list := guard.Open(buf.Bytes())
	require.Empty(t, list)
	require.Len(t, b.Sheets, 2)
	assert.True(t, b.Sheet("SECOND ONE").Hidden)
	assert.Nil(t, b.Sheet("third"))
	assert.Equal(t, []guard.Name{{Name: "taps", Text: "'Second one'!$B$2"}}, b.Names)
	assert.Equal(t, []guard.Remark{{Row: 2, Column: 2, Author: "Ann", Text: "is it so?"}}, b.Sheets[0].Remarks)
}

func TestRemarksInThreads(t *testing.T) {
	rels := `<Relationships><Relationship Id="a" Type="` + relTypes + `comments" Target="../comments1.xml"/><Relationship Id="b" Type="http://x/2017/10/relationships/threadedComment" Target="../threadedComments/t1.xml"/></Relationships>`
	b, list := guard.Open(zipped(t, map[string]string{"xl/worksheets/_rels/sheet1.xml.rels": rels,
		"xl/comments1.xml":           `<comments><authors><author>tc=1</author></authors><commentList><comment ref="A1" authorId="0"><text><t>[Threaded comment] plain copy</t></text></comment></commentList></comments>`,
		"xl/threadedComments/t1.xml": `<ThreadedComments><threadedComment ref="A1" personId="p"><text>Why 140?</text></threadedComment><threadedComment ref="A1"><text>We hung more</text></threadedComment></ThreadedComments>`}))
	require.Empty(t, list)
	assert.Equal(t, []guard.Remark{{Row: 1, Column: 1, Text: "Why 140?"}, {Row: 1, Column: 1, Text: "We hung more"}}, b.Sheets[0].Remarks)
}

func TestOwnNamesOfASheetDoNotCount(t *testing.T) {
	b, list := guard.Open(zipped(t, nil))
	require.Empty(t, list)
	assert.Equal(t, []guard.Name{{Name: "taps", Text: "Plan!$B$2"}}, b.Names)
}

func code(list diag.List) diag.Code {
	if len(list) == 0 {
		return ""
	}
	return list[0].Code
}

func TestWhatIsCarriedAlongIsTold(t *testing.T) {
	b, list := guard.Open(zipped(t, map[string]string{"xl/vbaProject.bin": "x"}))
	require.NotNil(t, b)
	assert.Equal(t, diag.MacrosDropped, code(list))
	assert.Equal(t, diag.Warning, list[0].Severity)
	b, list = guard.Open(zipped(t, map[string]string{"xl/externalLinks/externalLink1.xml": "<x/>"}))
	require.NotNil(t, b)
	assert.Equal(t, diag.OutsideLinks, code(list))
	b, list = guard.Open(zipped(t, map[string]string{"xl/worksheets/sheet1.xml": "", "xl/worksheets/sheet2.xml": sheetXML("")}))
	require.NotNil(t, b)
	assert.Equal(t, diag.ReadInPart, code(list), strings.TrimSpace("a sheet that is named but not there"))
}
