// Package workbook writes a bound sheet as a workbook (xlsx, ECMA-376) that
// still calculates, and reads such a workbook back.
//
// # What goes out
//
// A workbook holds one plan or several. Each plan has sheets of its own: for the
// first they are called "Plan", "Tables", "Ranges", "Records" and "Steps", for
// the second "Plan 2" and so on; a sheet that would be empty is left out. "Start
// here", "Compare" and "Lay in" stand once. People rename, reorder and copy
// sheets, so their names are never used to find anything.
//
// Three things say what a cell is. They overlap on purpose, because each can be
// lost: sorting leaves names behind, other programs drop names or hidden rows,
// and people delete what they do not know.
//
// # Marks
//
// Above every block of cells stands a hidden row of marks. Each mark is a text
// in the column it speaks of, readable by itself ([Mark], [ParseMark]):
//
//	thawbook plan 1 label          the label of a line
//	thawbook plan 1 value          its number: what it is, its likely guess, its choice
//	thawbook plan 1 low            the low of a guess
//	thawbook plan 1 high           the high of a guess
//	thawbook plan 1 unit
//	thawbook plan 1 note
//	thawbook plan 1 remark         empty, for the partner's own words
//	thawbook plan 1 id             the line's id
//	thawbook plan 1 working        its formula in our words, as text
//	thawbook table 1 fuels label   the label of a row
//	thawbook table 1 fuels id      the row's id
//	thawbook table 1 fuels value heat    the number of column "heat"; low, high likewise
//	thawbook records 1 evenings value    past values of the line "evenings", downward
//	thawbook names 1 filter id     names of a choice that is not among a table's rows
//	thawbook own 1 label           rows left empty for lines of the partner's own:
//	                               label, value, low, high, unit, note
//
// A mark holds for the rows below it down to the next mark in its column, or to
// the end of the sheet. A row is known by the text in its id column, which moves
// with it when rows are sorted, inserted or copied. A column is known by its
// mark, which moves with it when columns are inserted or moved. Rows of ours that
// are no line, such as a chapter's title, have "thawbook" for an id, and a row of
// headings has "Called". A row with no id that is not empty was added by the
// partner.
//
// A cell holds a number with 15 digits, as the library writes them; the index
// has it in full, so the two may differ in the last places of a double.
//
// # Defined names
//
// Every line's number has a defined name equal to the line's id; a table's cell
// is called table_row_column, a whole column table_column, the ids of its rows
// table_id, the ends of a guess id_low and id_high, the cells of records
// id_records, the names of a choice id_names, and a step of a working
// line_step_1. A name of a later plan ends in _2, _3 and so on. Where that would
// be taken, or would read as a cell's address or as something a program keeps
// for itself, "line_" goes in front or a number behind ([Index] has them all).
// Names are how the formulas read; they follow rows and columns that are
// inserted, but not rows that are sorted.
//
// Where a mark and a name disagree about a cell, the mark is right.
//
// # The index
//
// A sheet that no menu shows holds [Index]: the plans with the sheet's own text,
// a hash of it, its seasons and seed, and for every cell that may come back its
// plan, id, part, name, sheet, address, kind, unit, what stood in it and, for a
// formula, its text in our words and as it was written out. It is found by its
// first cell, which reads "thawbook index", wherever it stands and whatever it
// is called, or by the defined name thawbook_index. Everything in it is text, so
// that no program rounds a number on the way.
//
// With the text as it was sent, a sheet changed at both ends is merged three
// ways: as sent, as it is here now, as it came back.
package workbook
