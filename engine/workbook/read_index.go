package workbook

import (
	"errors"
	"fmt"
	"strconv"

	"thawbook/engine/sheet"
)

// ErrNoIndex says that the rows are no index of ours.
var ErrNoIndex = errors.New("the hidden list is not there")

// ReadIndex reads the rows of the hidden sheet, as texts. Rows it does not know
// are passed over, so that a later form may add some. The error is ErrNoIndex
// when the first row is not an index's, or says what is damaged.
func ReadIndex(rows [][]string) (Index, error) {
	if len(rows) == 0 || at(rows[0], 0) != indexTitle {
		return Index{}, ErrNoIndex
	}
	version, err := strconv.Atoi(at(rows[0], 1))
	if err != nil || version < 1 {
		return Index{}, ErrNoIndex
	}
	if version > Version {
		return Index{}, fmt.Errorf("the hidden list is of form %d; this program reads up to %d", version, Version)
	}
	r := indexReader{Index: Index{Version: version, Money: at(rows[0], 2)}}
	for _, row := range rows[1:] {
		r.row(row)
		if r.err != nil {
			return Index{}, r.err
		}
	}
	if r.finish(); r.err != nil {
		return Index{}, r.err
	}
	return r.Index, nil
}

type indexReader struct {
	Index
	sizes  []int
	packed []string
	err    error
}

// at is the text in a row's column, "" beyond its end: other programs drop empty
// cells there.
func at(row []string, i int) string {
	if i < len(row) {
		return row[i]
	}
	return ""
}

func (r *indexReader) damaged(what string) {
	if r.err == nil {
		r.err = fmt.Errorf("the hidden list is damaged: %s", what)
	}
}

func (r *indexReader) whole(text, what string, most int) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n > most {
		r.damaged(what)
		return 0
	}
	return n
}

func (r *indexReader) row(row []string) {
	switch at(row, 0) {
	case "plan":
		r.plan(row)
	case "source":
		plan := r.whole(at(row, 1), "a text of no plan", len(r.Plans))
		if plan < 1 {
			r.damaged("a text of no plan")
			return
		}
		r.packed[plan-1] += at(row, 2)
		if len(r.packed[plan-1]) > 2*sheet.MaxBytes {
			r.damaged("a text too long")
		}
	case "cell":
		r.cell(row)
	}
}

func (r *indexReader) plan(row []string) {
	if len(r.Plans) == MaxPlans || r.whole(at(row, 1), "a plan without its number", MaxPlans) != len(r.Plans)+1 {
		r.damaged("plans out of order")
		return
	}
	seed, err := strconv.ParseUint(at(row, 7), 10, 64)
	if err != nil {
		r.damaged("a plan without its seed")
		return
	}
	r.Plans = append(r.Plans, Sent{File: at(row, 2), Title: at(row, 3), Hash: at(row, 4),
		Seasons: r.whole(at(row, 6), "a plan without its seasons", sheet.MaxSeasons), Seed: seed})
	r.sizes = append(r.sizes, r.whole(at(row, 5), "a plan without its size", sheet.MaxBytes))
	r.packed = append(r.packed, "")
}

func (r *indexReader) cell(row []string) {
	if len(r.Entries) == maxEntries {
		r.damaged("too many cells")
		return
	}
	e := Entry{Plan: r.whole(at(row, 1), "a cell of no plan", len(r.Plans)), ID: at(row, 2), Part: Part(at(row, 3)),
		Kind: sheet.Kind(at(row, 4)), Unit: at(row, 5), Name: at(row, 6), Sheet: at(row, 7), Cell: at(row, 8), Held: at(row, 9) == "held"}
	if e.Plan < 1 || e.ID == "" {
		r.damaged("a cell of no plan")
	}
	next := 10
	for _, to := range []*string{&e.Sent, &e.Formula, &e.Written} {
		n := r.whole(at(row, next), "a cell cut short", len(row))
		next++
		for range n {
			*to += at(row, next)
			next++
		}
	}
	r.Entries = append(r.Entries, e)
}

// finish unpacks the texts and holds each to its hash.
func (r *indexReader) finish() {
	if len(r.Plans) == 0 {
		r.damaged("no plan")
	}
	for i := range r.Plans {
		p := &r.Plans[i]
		source, err := unpack(r.packed[i], r.sizes[i])
		if err != nil {
			r.damaged(err.Error())
			return
		}
		if Hash(source) != p.Hash {
			r.damaged("the sheet's text is not the one that was sent")
			return
		}
		p.Source = source
	}
}
