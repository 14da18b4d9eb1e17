package workbook

import (
	"bytes"
	"compress/flate"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"strconv"

	"thawbook/engine/sheet"
)

// Version is the form of the index that Write writes and ReadIndex reads.
const Version = 1

// Caps on what an index may ask for.
const (
	MaxPlans   = 16
	maxEntries = 64 * sheet.MaxLines
)

// The index sheet's own marks.
const (
	indexTitle = "thawbook index" // its first cell
	indexName  = "thawbook_index" // the defined name of that cell
	indexSheet = "thawbook"       // the sheet's name as it goes out
	textChunk  = 30000            // characters of a cell; the standard allows 32,767
)

// Index is what the hidden sheet says: what went out, and where it stood.
type Index struct {
	// Version is the form the index was written in.
	Version int
	Money   string
	Plans   []Sent
	Entries []Entry
}

// Sent is one plan as it went out.
type Sent struct {
	// File is the name the sheet was opened by, Title its title.
	File, Title string
	// Source is the sheet's text, byte for byte. Hash is its SHA-256 in hex.
	Source []byte
	Hash   string
	// Seasons and Seed are what the fixed ranges were reckoned from.
	Seasons int
	Seed    uint64
}

// Entry is one cell that may come back.
type Entry struct {
	// Plan counts the plans from 1. ID is the line's, or table.row.column.
	Plan int
	ID   string
	// Part is Value, Low or High; Past for the range of a line's records.
	Part Part
	// Kind is the line's kind: is, guess, records, choose or formula.
	Kind sheet.Kind
	// Unit is the unit's text as its author wrote it.
	Unit string
	// Name is the cell's defined name; Sheet and Cell are where it stood.
	Name, Sheet, Cell string
	// Sent is what stood there: a number in full, a choice's name, the past
	// values with spaces between; "" when it came to no number.
	Sent string
	// Formula is the line's formula in our words; Written what the cell holds
	// instead, as the workbook has it. Both are "" for an input.
	Formula, Written string
	// Held says that the line has a formula but went out as a fixed number.
	Held bool
}

// Hash is the SHA-256 of a sheet's text in hex.
func Hash(source []byte) string {
	sum := sha256.Sum256(source)
	return hex.EncodeToString(sum[:])
}

// Number reads what Sent holds for a number; false when it holds none.
func (e Entry) Number() (float64, bool) {
	x, err := strconv.ParseFloat(e.Sent, 64)
	return x, err == nil
}

// rows is the index as rows of texts.
func (ix Index) rows() ([][]string, error) {
	out := [][]string{{indexTitle, strconv.Itoa(Version), ix.Money}}
	for i, p := range ix.Plans {
		plan := strconv.Itoa(i + 1)
		out = append(out, []string{"plan", plan, p.File, p.Title, Hash(p.Source), strconv.Itoa(len(p.Source)),
			strconv.Itoa(p.Seasons), strconv.FormatUint(p.Seed, 10)})
		packed, err := pack(p.Source)
		if err != nil {
			return nil, err
		}
		for at := 0; at < len(packed); at += textChunk {
			out = append(out, []string{"source", plan, packed[at:min(at+textChunk, len(packed))]})
		}
	}
	for _, e := range ix.Entries {
		held := ""
		if e.Held {
			held = "held"
		}
		row := []string{"cell", strconv.Itoa(e.Plan), e.ID, string(e.Part), string(e.Kind), e.Unit, e.Name, e.Sheet, e.Cell, held}
		for _, long := range []string{e.Sent, e.Formula, e.Written} {
			row = append(row, strconv.Itoa(pieces(long)))
			for at := 0; at < len(long); at += textChunk {
				row = append(row, long[at:min(at+textChunk, len(long))])
			}
		}
		out = append(out, row)
	}
	return out, nil
}

func pieces(text string) int { return (len(text) + textChunk - 1) / textChunk }

// pack makes one line of plain letters of a text, because spreadsheets change
// line ends, spaces and signs on their way through other programs.
func pack(source []byte) (string, error) {
	var buf bytes.Buffer
	w, err := flate.NewWriter(&buf, flate.BestCompression)
	if err != nil {
		return "", err
	}
	if _, err := w.Write(source); err != nil {
		return "", err
	}
	if err := w.Close(); err != nil {
		return "", err
	}
	return base64.StdEncoding.EncodeToString(buf.Bytes()), nil
}

// unpack reads what pack wrote, size bytes of it and no more.
func unpack(text string, size int) ([]byte, error) {
	if size < 0 || size > sheet.MaxBytes {
		return nil, errors.New("the sheet's text is larger than a sheet may be")
	}
	packed, err := base64.StdEncoding.DecodeString(text)
	if err != nil {
		return nil, err
	}
	source, err := io.ReadAll(io.LimitReader(flate.NewReader(bytes.NewReader(packed)), int64(size)+1))
	if err != nil {
		return nil, err
	}
	if len(source) != size {
		return nil, fmt.Errorf("the sheet's text has %d bytes instead of %d", len(source), size)
	}
	return source, nil
}
