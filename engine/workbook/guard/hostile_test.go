package guard_test

import (
	"archive/zip"
	"bytes"
	"fmt"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"thawbook/engine/diag"
	"thawbook/engine/workbook/guard"
)

// raw is a zip of parts in order, written as told.
func raw(t testing.TB, write func(*zip.Writer)) []byte {
	var buf bytes.Buffer
	w := zip.NewWriter(&buf)
	write(w)
	require.NoError(t, w.Close())
	return buf.Bytes()
}

func TestHostileFilesEndInADiagnostic(t *testing.T) {
	sheet := func(text string) map[string]string {
		return map[string]string{"xl/worksheets/sheet1.xml": text}
	}
	laughs := `<!DOCTYPE x [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;">]>`
	for name, c := range map[string]struct {
		data []byte
		code diag.Code
		says string
	}{
		"nothing":           {nil, diag.NotAWorkbook, "empty"},
		"text":              {[]byte("name,number\ntaps,140\n"), diag.NotAWorkbook, "not a workbook"},
		"old form":          {append([]byte{0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1}, make([]byte, 512)...), diag.NotAWorkbook, "old form"},
		"no parts":          {raw(t, func(*zip.Writer) {}), diag.NotAWorkbook, "not a workbook"},
		"other form":        {zipped(t, map[string]string{"content.xml": "x", "mimetype": "application/vnd.oasis"}), diag.NotAWorkbook, "another form"},
		"binary form":       {zipped(t, map[string]string{"xl/workbook.bin": "x"}), diag.NotAWorkbook, "binary"},
		"a document":        {zipped(t, map[string]string{"word/document.xml": "x"}), diag.NotAWorkbook, "a document"},
		"too large":         {make([]byte, guard.MaxFile+1), diag.WorkbookTooLarge, "16 MiB"},
		"bomb":              {zipped(t, sheet(sheetXML(strings.Repeat(" ", 40<<20)))), diag.WorkbookTooLarge, "times its size"},
		"many parts":        {raw(t, func(w *zip.Writer) { many(w, 3000) }), diag.WorkbookTooLarge, "3000 parts"},
		"twice":             {raw(t, func(w *zip.Writer) { _, _ = w.Create("xl/a.xml"); _, _ = w.Create("XL/A.xml") }), diag.WorkbookDamaged, "twice"},
		"points out":        {zipped(t, map[string]string{"xl/../../../etc/passwd": "x"}), diag.WorkbookDamaged, "points out"},
		"long name":         {zipped(t, map[string]string{strings.Repeat("x", 500): "x"}), diag.WorkbookDamaged, "a name that no workbook has"},
		"laughs":            {zipped(t, sheet(laughs+sheetXML("<row>&b;</row>"))), diag.WorkbookDamaged, "declares entities"},
		"entity unknown":    {zipped(t, sheet(sheetXML("<row>&b;</row>"))), diag.WorkbookDamaged, "entity"},
		"deep":              {zipped(t, sheet(sheetXML(strings.Repeat("<a>", 50_000)))), diag.WorkbookDamaged, "too deep"},
		"not closed":        {zipped(t, sheet("<worksheet><sheetData>")), diag.WorkbookDamaged, "damaged"},
		"closed twice":      {zipped(t, sheet("<worksheet></sheetData></worksheet>")), diag.WorkbookDamaged, "closed before"},
		"not XML":           {zipped(t, sheet("\x00\x01\x02")), diag.WorkbookDamaged, "damaged"},
		"other letters":     {zipped(t, sheet("\xff\xfe<\x00a\x00>\x00")), diag.WorkbookDamaged, "damaged"},
		"main is no book":   {zipped(t, map[string]string{"xl/workbook.xml": "<document/>"}), diag.WorkbookDamaged, "not a workbook"},
		"no sheet":          {zipped(t, map[string]string{"xl/workbook.xml": "<workbook/>"}), diag.WorkbookDamaged, "no sheet"},
		"many sheets":       {zipped(t, map[string]string{"xl/workbook.xml": "<workbook>" + strings.Repeat("<sheet/>", 300) + "</workbook>"}), diag.WorkbookTooLarge, "more than may be read"},
		"locked":            {locked(t), diag.WorkbookLocked, "password"},
		"main is elsewhere": {zipped(t, map[string]string{"xl/workbook.xml": "", "_rels/.rels": strings.ReplaceAll(rootRels, "xl/workbook.xml", "/xl/gone.xml")}), diag.NotAWorkbook, "not a workbook"},
	} {
		t.Run(name, func(t *testing.T) {
			b, list := guard.Open(c.data)
			assert.Nil(t, b)
			require.Len(t, list, 1)
			assert.Equal(t, c.code, list[0].Code, list[0].Message)
			assert.Contains(t, list[0].Message, c.says)
			assert.Equal(t, diag.Error, list[0].Severity)
		})
	}
}

func many(w *zip.Writer, n int) {
	for i := range n {
		_, _ = w.Create(fmt.Sprintf("xl/p%d.xml", i))
	}
}

func locked(t testing.TB) []byte {
	f := excelize.NewFile()
	buf, err := f.WriteToBuffer()
	require.NoError(t, err)
	data, err := excelize.Encrypt(buf.Bytes(), &excelize.Options{Password: "maple"})
	require.NoError(t, err)
	return data
}

// A zip may say that a part is small and unpack to more.
func TestAPartThatLiesAboutItsSize(t *testing.T) {
	data := zipped(t, map[string]string{"xl/worksheets/sheet1.xml": sheetXML("<row>" + strings.Repeat("<c><v>123456</v></c>", 100_000) + "</row>")})
	for i := 0; i+46 < len(data); i++ {
		if bytes.HasPrefix(data[i:], []byte("PK\x01\x02")) && bytes.Contains(data[i+46:min(len(data), i+100)], []byte("sheet1.xml")) {
			copy(data[i+24:], []byte{10, 0, 0, 0})
		}
	}
	b, list := guard.Open(data)
	if b == nil {
		assert.Equal(t, diag.WorkbookDamaged, code(list))
		return
	}
	assert.LessOrEqual(t, len(b.Sheets[0].Cells), 100_000)
}

func TestMillionRowsAreReadInPart(t *testing.T) {
	var rows strings.Builder
	for i := 1; i <= 1_048_576; i++ {
		fmt.Fprintf(&rows, `<row r="%d"><c r="A%d"><v>%d</v></c></row>`, i, i, i*7919%104729)
	}
	data := zipped(t, map[string]string{"xl/worksheets/sheet1.xml": sheetXML(rows.String())})
	rows.Reset()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	b, list := guard.Open(data)
	runtime.ReadMemStats(&after)
	require.NotNil(t, b, list)
	require.Equal(t, diag.ReadInPart, code(list))
	assert.Contains(t, list[0].Message, "nothing after row")
	assert.Len(t, b.Sheets[0].Cells, guard.MaxCells)
	assert.InDelta(t, 7919, b.Sheets[0].At(1, 1).Number, 0)
	assert.Less(t, after.HeapAlloc-min(before.HeapAlloc, after.HeapAlloc), uint64(400<<20), "bytes kept")
}

func TestCellsBeyondTheLastAreNotRead(t *testing.T) {
	for _, rows := range []string{`<row r="99999999999"/><row r="5"/>`, `<row r="1048577"><c/></row>`, `<row r="1"><c r="XFE1"><v>1</v></c></row>`, `<row r="-4"><c><v>1</v></c></row>`} {
		b, _ := guard.Open(zipped(t, map[string]string{"xl/worksheets/sheet1.xml": sheetXML(rows)}))
		require.NotNil(t, b)
		assert.LessOrEqual(t, len(b.Sheets[0].Cells), 1, rows)
	}
}

// TestTruncated cuts a workbook short at every kilobyte: what is left is told
// to be damaged, and never read as if it were whole.
func TestTruncated(t *testing.T) {
	f := excelize.NewFile()
	for row := 1; row <= 3000; row++ {
		require.NoError(t, f.SetCellValue("Sheet1", fmt.Sprintf("A%d", row), float64(row*7919%104729)/7))
	}
	buf, err := f.WriteToBuffer()
	require.NoError(t, err)
	data := buf.Bytes()
	require.Greater(t, len(data), 20<<10)
	for n := 0; n < len(data); n += 1 << 10 {
		b, list := guard.Open(data[:n])
		assert.Nil(t, b, n)
		assert.Equal(t, 1, list.Errors(), n)
	}
}

func FuzzOpen(f *testing.F) {
	f.Add(zipped(f, nil))
	f.Add(zipped(f, map[string]string{"xl/worksheets/sheet1.xml": sheetXML(`<row r="2"><c r="B2" t="s"><f t="shared" si="0" ref="B2:B9">A1*$C$3</f><v>0</v></c><c r="B3"><f t="shared" si="0"/></c></row>`)}))
	f.Add(zipped(f, map[string]string{"xl/workbook.xml": bookXML + "<x", "xl/vbaProject.bin": "x"}))
	f.Fuzz(func(t *testing.T, data []byte) {
		b, list := guard.Open(data)
		if (b == nil) != (list.Errors() > 0) {
			t.Fatal("a book beside an error, or neither", list)
		}
	})
}

// FuzzSheet fuzzes what stands inside the zip, which FuzzOpen seldom reaches.
func FuzzSheet(f *testing.F) {
	f.Add(sheetXML(`<row r="2"><c r="B2" t="s"><v>0</v></c><c r="ZZ9" t="inlineStr"><is><r><t>x</t></r></is></c></row>`), bookXML, `<sst><si><t>a</t></si></sst>`)
	f.Add(sheetXML(`<row><c t="b"><f>B1</f><v>1</v></c><c t="d"><v>2019</v></c></row>`), "<workbook/>", "<sst>")
	f.Fuzz(func(t *testing.T, sheet, book, texts string) {
		b, list := guard.Open(zipped(t, map[string]string{"xl/worksheets/sheet1.xml": sheet, "xl/workbook.xml": book, "xl/sharedStrings.xml": texts}))
		if (b == nil) != (list.Errors() > 0) {
			t.Fatal("a book beside an error, or neither", list)
		}
	})
}
