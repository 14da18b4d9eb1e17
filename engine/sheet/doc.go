// Package sheet is the document: chapters of lines and tables, read from a YAML
// file with the place of everything in it, taken from another sheet by a
// scenario, and edited by splicing the file's own text.
//
// [Parse] tells what is wrong with the form of one file. [Resolve] follows
// `from`, applies a scenario's changes and tells what is wrong with the sense of
// the whole: ids, units, bounds, choices. A caller shows both lists. [Doc.Edit]
// writes one change into the text and touches nothing else.
package sheet

import (
	"slices"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// Caps on what one sheet may hold.
const (
	MaxBytes   = 1 << 20   // bytes of one file
	MaxDepth   = 64        // nesting of YAML
	MaxLines   = 5000      // lines and table cells of one sheet
	MaxRecords = 10000     // records of one line
	MaxSeasons = 1_000_000 // seasons of one reckoning
	MaxChain   = 8         // scenarios taken from each other
)

// Seasons and seed of a sheet that names none.
const (
	DefaultSeasons = 10000
	DefaultSeed    = 1
)

// Doc is one file: its source bytes and what they say. It is immutable.
type Doc struct {
	name   string
	source []byte
	root   *yaml.Node
	marks  *marks
	list   diag.List

	head     head
	chapters []*chapterPart
	changes  []*change
	drops    []drop
}

// head is the top of a file. A nil pointer is a key that is not there.
type head struct {
	title, about, money, from *string
	seasons                   *int
	seed                      *uint64
	elevation                 *Line
	places                    map[string]diag.Place
}

// change is one entry of a scenario's change: only the keys it gives, which are
// those with a place in line.Places, mean anything.
type change struct {
	id    string
	place diag.Place
	line  *Line
}

// drop is one entry of a scenario's drop.
type drop struct {
	id    string
	place diag.Place
}

// Parse reads one sheet file. name is used in places and to find the file that
// `from` names. Doc is nil when the file cannot be read as YAML at all, or is not
// a sheet of this form; otherwise it holds whatever could be read, and the list
// everything that could not, sorted. The Doc keeps source, which must not be
// changed afterwards.
func Parse(name string, source []byte) (*Doc, diag.List) {
	root, marks, fault := readYAML(source)
	if fault != nil {
		return nil, diag.List{fault.diagnostic(name, marks)}
	}
	r := &reader{file: name, marks: marks}
	d := &Doc{name: name, source: source, root: root, marks: marks}
	if !r.readDoc(d) {
		r.list.Sort()
		return nil, r.list
	}
	r.list.Sort()
	// Clipped, so that a caller who appends to it leaves ours alone.
	d.list = slices.Clip(r.list)
	return d, d.list
}

// Name is the name the file was parsed under.
func (d *Doc) Name() string { return d.name }

// Source is the text of the file, byte for byte as it was parsed or as an edit
// left it. The caller must not change it.
func (d *Doc) Source() []byte { return d.source }

// Diagnostics is what Parse told about this file; it must not be changed.
func (d *Doc) Diagnostics() diag.List { return d.list }

// From is the name of the sheet this one is taken from, as written; "" for a
// sheet of its own.
func (d *Doc) From() string {
	if d.head.from == nil {
		return ""
	}
	return *d.head.from
}
