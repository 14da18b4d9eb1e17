// Package back reads a workbook of ours that comes back from a partner: it finds
// our cells again wherever they went, and says what was changed, line by line,
// against what was sent and what the sheet here says now. It changes nothing.
//
// Cells are found by their marks, whose ids move with rows that are sorted and
// with columns that are moved, then by their defined names, and compared with
// what the hidden index says stood there. See package workbook for all three.
package back
