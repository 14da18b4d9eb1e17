package guard

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"thawbook/engine/diag"
)

// Limits on a file from outside. They hold before anything is made of what it
// says, so that whatever it holds costs bounded time and memory.
const (
	MaxFile     = 16 << 20 // bytes of the file as it came
	maxParts    = 2000     // files inside it
	maxPartName = 400      // bytes of one's name
	maxPart     = 32 << 20 // unpacked bytes of one that is read
	maxAll      = 64 << 20 // unpacked bytes of all that are read
	// A sheet of numbers packs 10 to 60 to 1. What packs far better says the
	// same thing over and over, and is meant to fill the memory.
	maxRatio     = 400
	ratioMatters = 4 << 20
)

// parcel is an opened zip and how much may still be unpacked of it.
type parcel struct {
	parts map[string]*zip.File // by small letters
	left  int64
}

// refused is a diagnostic that ends the reading.
func refused(code diag.Code, hint, format string, args ...any) *diag.Diagnostic {
	return &diag.Diagnostic{Code: code, Severity: diag.Error, Message: fmt.Sprintf(format, args...), Hint: hint}
}

const saveAgain = "save it again as a workbook (.xlsx) and take that copy back"

// openParcel opens a file's bytes as a zip whose parts are all within the limits.
func openParcel(data []byte) (*parcel, *diag.Diagnostic) {
	if len(data) > MaxFile {
		return nil, refused(diag.WorkbookTooLarge, "a plan is far smaller: take large pictures and other data out", "the file is larger than %d MiB", MaxFile>>20)
	}
	if d := notZip(data); d != nil {
		return nil, d
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, refused(diag.WorkbookDamaged, "it may have been cut short on its way: send it again", "the file is damaged: %v", err)
	}
	if len(z.File) > maxParts {
		return nil, refused(diag.WorkbookTooLarge, saveAgain, "the file holds %d parts, more than %d", len(z.File), maxParts)
	}
	p := &parcel{parts: map[string]*zip.File{}, left: maxAll}
	for _, f := range z.File {
		if d := p.add(f); d != nil {
			return nil, d
		}
	}
	return p, p.notWorkbook()
}

// notZip tells what a file that is no zip is, as far as its first bytes say.
func notZip(data []byte) *diag.Diagnostic {
	compound := []byte{0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1}
	switch {
	case len(data) == 0:
		return refused(diag.NotAWorkbook, "", "the file is empty")
	case bytes.HasPrefix(data, compound) && bytes.Contains(data, wide("EncryptedPackage")):
		return refused(diag.WorkbookLocked, "open it with its password and save it without one", "the file is locked with a password")
	case bytes.HasPrefix(data, compound):
		return refused(diag.NotAWorkbook, saveAgain, "the file is a workbook of an old form")
	case bytes.HasPrefix(data, []byte("PK\x03\x04")), bytes.HasPrefix(data, []byte("PK\x05\x06")):
		return nil
	}
	return refused(diag.NotAWorkbook, saveAgain, "the file is not a workbook")
}

// wide is text as compound files spell their names: two bytes a letter.
func wide(text string) []byte {
	out := make([]byte, 0, 2*len(text))
	for _, c := range []byte(text) {
		out = append(out, c, 0)
	}
	return out
}

func (p *parcel) add(f *zip.File) *diag.Diagnostic {
	if strings.HasSuffix(f.Name, "/") {
		return nil
	}
	// Some programs write names with a stroke in front, or leaning the other way.
	name := strings.TrimPrefix(strings.ReplaceAll(f.Name, `\`, "/"), "/")
	switch parts := strings.Split(name, "/"); {
	case len(name) > maxPartName || !utf8.ValidString(name) || strings.ContainsRune(name, 0):
		return refused(diag.WorkbookDamaged, saveAgain, "a part of the file has a name that no workbook has")
	case slices.Contains(parts, "..") || slices.Contains(parts, "."):
		return refused(diag.WorkbookDamaged, saveAgain, "the part %q points out of the file", name)
	case f.Flags&1 != 0:
		return refused(diag.WorkbookLocked, "save it without a password", "the part %q is locked with a password", name)
	case f.UncompressedSize64 > ratioMatters && f.UncompressedSize64/max(f.CompressedSize64, 1) > maxRatio:
		return refused(diag.WorkbookTooLarge, saveAgain, "the part %q unpacks to %d times its size", name, f.UncompressedSize64/max(f.CompressedSize64, 1))
	}
	key := strings.ToLower(name)
	if p.parts[key] != nil {
		return refused(diag.WorkbookDamaged, saveAgain, "the file holds the part %q twice", name)
	}
	p.parts[key] = f
	return nil
}

// notWorkbook tells a zip that is something else than a workbook of this form.
func (p *parcel) notWorkbook() *diag.Diagnostic {
	switch {
	case p.has("xl/workbook.bin"):
		return refused(diag.NotAWorkbook, saveAgain, "the file is a workbook of a binary form")
	case p.has("content.xml") && p.has("mimetype"), p.has("index/document.iwa"):
		return refused(diag.NotAWorkbook, saveAgain, "the file is a workbook of another form")
	case p.has("word/document.xml"), p.has("ppt/presentation.xml"):
		return refused(diag.NotAWorkbook, "hand in the workbook itself", "the file is a document, not a workbook")
	case !p.has("[content_types].xml") && !p.has("_rels/.rels") && !p.has("xl/workbook.xml"):
		return refused(diag.NotAWorkbook, saveAgain, "the file is a zip, but not a workbook")
	}
	return nil
}

func (p *parcel) has(name string) bool { return p.parts[strings.ToLower(name)] != nil }

// any reports whether a part has a name that begins so.
func (p *parcel) any(prefix string) bool {
	for name := range p.parts {
		if strings.HasPrefix(name, prefix) {
			return true
		}
	}
	return false
}

var (
	errTooMuch = errors.New("it unpacks to more than may be read")
	errMissing = errors.New("it is not there")
)

// open unpacks a part as it is read, and no more of it than the limits allow;
// beyond them reading ends with errTooMuch.
func (p *parcel) open(name string) (io.ReadCloser, error) {
	f := p.parts[strings.ToLower(name)]
	if f == nil {
		return nil, errMissing
	}
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	return &metered{r, p, maxPart}, nil
}

type metered struct {
	io.ReadCloser
	from *parcel
	left int64
}

func (m *metered) Read(b []byte) (int, error) {
	room := min(m.left, m.from.left)
	if room <= 0 {
		return 0, errTooMuch
	}
	n, err := m.ReadCloser.Read(b[:min(int64(len(b)), room)])
	m.left -= int64(n)
	m.from.left -= int64(n)
	return n, err
}
