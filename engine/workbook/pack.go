package workbook

import (
	"archive/zip"
	"bytes"
	"io"
	"io/fs"
	"regexp"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// errorMark stands before what is to be written as an error and not as text. It
// is a sign that plainText takes out of everything a person wrote.
const errorMark = "\uE000"

// failedCell is a formula's cell whose computed value the library wrote as text
// although it is an error.
var failedCell = regexp.MustCompile(`t="str"><f>([^<]*)</f><v>` + errorMark)

// typesPart lists what type each part is of.
const typesPart = "[Content_Types].xml"

// defaultType is the type of all parts with one ending.
var defaultType = regexp.MustCompile(`<Default Extension="([^"]*)"[^>]*></Default>`)

// packer gathers the parts of a workbook and writes them in a fixed order: the
// list of types first, where programs that read as they receive expect it, then
// by name, because the library hands them over in a random one.
type packer struct {
	zip   *zip.Writer
	names []string
	parts map[string]*bytes.Buffer
}

func newPacker(w io.Writer) excelize.ZipWriter {
	return &packer{zip: zip.NewWriter(w), parts: map[string]*bytes.Buffer{}}
}

// Create gives the writer of one part.
func (p *packer) Create(name string) (io.Writer, error) {
	name = strings.TrimPrefix(name, "/")
	if p.parts[name] == nil {
		p.names = append(p.names, name)
	}
	p.parts[name] = &bytes.Buffer{}
	return p.parts[name], nil
}

// AddFS is not used: no file of a disk goes into a workbook.
func (p *packer) AddFS(fsys fs.FS) error { return p.zip.AddFS(fsys) }

// Close writes the parts.
func (p *packer) Close() error {
	slices.SortFunc(p.names, func(a, b string) int {
		if order := rank(a) - rank(b); order != 0 {
			return order
		}
		return strings.Compare(a, b)
	})
	for _, name := range p.names {
		w, err := p.zip.Create(name)
		if err != nil {
			return err
		}
		part := p.parts[name].Bytes()
		switch {
		case name == typesPart:
			part = p.usedTypes(part)
		case bytes.Contains(part, []byte(errorMark)):
			part = failedCell.ReplaceAll(part, []byte(`t="e"><f>$1</f><v>`))
		}
		if _, err := w.Write(part); err != nil {
			return err
		}
	}
	return p.zip.Close()
}

// usedTypes leaves only the endings that a part has, in order: the library lists
// pictures of every kind and programs, in an order of its own each time.
func (p *packer) usedTypes(part []byte) []byte {
	var kept []string
	for _, found := range defaultType.FindAllSubmatch(part, -1) {
		ending := "." + string(found[1])
		if slices.ContainsFunc(p.names, func(name string) bool { return strings.HasSuffix(name, ending) }) {
			kept = append(kept, string(found[0]))
		}
	}
	slices.Sort(kept)
	first := true
	return defaultType.ReplaceAllFunc(part, func([]byte) []byte {
		if !first {
			return nil
		}
		first = false
		return []byte(strings.Join(kept, ""))
	})
}

func rank(name string) int {
	switch name {
	case typesPart:
		return 0
	case "_rels/.rels":
		return 1
	}
	return 2
}
