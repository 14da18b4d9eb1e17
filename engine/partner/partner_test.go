package partner

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"thawbook/engine"
	"thawbook/engine/diag"
	"thawbook/engine/sheet"
	"thawbook/engine/workbook/back"
)

const yard = "../../scenarios/back-yard-twelve.yaml"

func opened(t *testing.T, file string) *engine.Book {
	book, list := engine.Open(file, os.ReadFile)
	require.Empty(t, list)
	return book
}

func sent(t *testing.T, book *engine.Book) []byte {
	var out bytes.Buffer
	require.NoError(t, HandOver(&out, []*engine.Book{book}, HandOverOptions{}))
	return out.Bytes()
}

// typed is the workbook with a number typed over at a defined name.
func typed(t *testing.T, file []byte, name string, value any) []byte {
	f, err := excelize.OpenReader(bytes.NewReader(file))
	require.NoError(t, err)
	for _, n := range f.GetDefinedName() {
		if n.Name == name {
			where, cell, ok := strings.Cut(strings.NewReplacer("$", "", "'", "").Replace(n.RefersTo), "!")
			require.True(t, ok)
			require.NoError(t, f.SetCellValue(where, cell, value))
		}
	}
	var out bytes.Buffer
	require.NoError(t, f.Write(&out))
	return out.Bytes()
}

func report(t *testing.T, file []byte, book *engine.Book) *back.Report {
	r, list, err := TakeBack(file, book, engine.Options{Seasons: 2000})
	require.NoError(t, err)
	require.NotNil(t, r, list)
	return r
}

func TestOutAndBackWithNothingChanged(t *testing.T) {
	book := opened(t, yard)
	assert.Empty(t, report(t, sent(t, book), book).Changes)
}

func TestAChangeSaysWhatItDoesAndIsTakenIn(t *testing.T) {
	book := opened(t, yard)
	r := report(t, typed(t, sent(t, book), "taps", 20), book)
	require.Len(t, r.Changes, 1)
	c := r.Changes[0]
	assert.Equal(t, "taps", c.About)
	assert.Contains(t, c.Sent, "12")
	assert.Contains(t, c.Came, "20")
	moved := map[string]back.Effect{}
	for _, e := range c.Effects {
		moved[e.About] = e
	}
	assert.Equal(t, "yes", moved["syrup"].Better, "more taps make more syrup")
	assert.NotEqual(t, moved["syrup"].Before, moved["syrup"].After)

	next, taken, list := Accept(book, r, "all")
	assert.Empty(t, list)
	assert.Equal(t, []string{c.Key}, taken)
	assert.InDelta(t, 20, next.Sheet().Find("taps").Is, 0)
	assert.InDelta(t, 12, book.Sheet().Find("taps").Is, 0, "the sheet before is as it was")
	assert.Empty(t, report(t, typed(t, sent(t, book), "taps", 20), next).Changes, "what was taken in is agreed")
}

func TestAChangeMadeAtBothEndsIsAConflict(t *testing.T) {
	book := opened(t, yard)
	file := typed(t, sent(t, book), "taps", 20)
	fifteen := 15.0
	here, list := book.Edit(sheet.Edit{About: "taps", Set: sheet.Set{Is: &fifteen}})
	require.Empty(t, list)
	r := report(t, file, here)
	require.Len(t, r.Changes, 1)
	assert.True(t, r.Changes[0].Conflict)
	assert.Contains(t, r.Changes[0].Here, "15")
	same, taken, list := Accept(here, r, "all")
	assert.Empty(t, taken, "all leaves conflicts to be named")
	assert.Empty(t, list)
	assert.Same(t, here, same)
	next, taken, _ := Accept(here, r, r.Changes[0].Key)
	assert.Len(t, taken, 1)
	assert.InDelta(t, 20, next.Sheet().Find("taps").Is, 0)
}

func TestAcceptTellsAKeyThatIsNotThere(t *testing.T) {
	book := opened(t, yard)
	r := report(t, typed(t, sent(t, book), "taps", 20), book)
	same, taken, list := Accept(book, r, "tapz")
	assert.Same(t, book, same)
	assert.Empty(t, taken)
	require.Len(t, list, 1)
	assert.Equal(t, `did you mean "taps"?`, list[0].Hint)
}

func TestWhatIsNoWorkbookIsRefused(t *testing.T) {
	r, list, err := TakeBack([]byte("not a workbook"), opened(t, yard), engine.Options{})
	require.NoError(t, err)
	assert.Nil(t, r)
	require.NotEmpty(t, list)
}

func TestAWorkbookThatWasNeverOursIsTold(t *testing.T) {
	f := excelize.NewFile()
	require.NoError(t, f.SetCellValue("Sheet1", "A1", "Buckets"))
	require.NoError(t, f.SetCellValue("Sheet1", "B1", 12))
	var file bytes.Buffer
	require.NoError(t, f.Write(&file))
	r, list, err := TakeBack(file.Bytes(), opened(t, yard), engine.Options{})
	require.NoError(t, err)
	assert.Nil(t, r)
	require.NotEmpty(t, list)
	assert.Equal(t, diag.MarksLost, list[len(list)-1].Code)
}

func TestAWorkbookOfAnotherSheetSaysSo(t *testing.T) {
	file := sent(t, opened(t, yard))
	r := report(t, file, opened(t, "../../scenarios/petite-riviere.yaml"))
	require.NotEmpty(t, r.Told)
	assert.Equal(t, diag.WrongPlan, r.Told[0].Code)
	assert.Contains(t, r.Told[0].Message, `"back-yard-twelve.yaml"`)
}
