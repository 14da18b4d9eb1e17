package guard

import (
	"bufio"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
)

// maxDepth is how deep elements may stand inside each other. What we read goes
// down a dozen.
const maxDepth = 64

var (
	errStop    = errors.New("enough was read") // what a visitor ends the reading with
	errTooDeep = errors.New("its elements stand too deep inside each other")
	errDTD     = errors.New("it declares entities, which a workbook must not")
)

// visitor is told a part's elements in order, by their names without a prefix.
// An error from it ends the reading.
type visitor struct {
	open  func(name string, attr attributes) error
	text  func(text []byte)
	close func(name string)
}

type attributes []xml.Attr

// get is an attribute's value by its name without a prefix, "" when not there.
func (a attributes) get(name string) string {
	for _, at := range a {
		if at.Name.Local == name {
			return at.Value
		}
	}
	return ""
}

// walk reads a part element by element, never holding more than one and never
// calling itself, so that no part is too deep for the page's small stack. It
// looks at names without their prefixes, because programs choose those freely.
func (p *parcel) walk(part string, v visitor) error {
	r, err := p.open(part)
	if err != nil {
		return fmt.Errorf("%s: %w", part, err)
	}
	defer r.Close()
	err = walkXML(r, v)
	if err != nil && !errors.Is(err, errStop) {
		return fmt.Errorf("%s: %w", part, err)
	}
	return err
}

func walkXML(r io.Reader, v visitor) error {
	d := xml.NewDecoder(bufio.NewReaderSize(r, 1<<16))
	var names []string
	for {
		token, err := d.RawToken()
		switch {
		case err == io.EOF && len(names) > 0:
			return io.ErrUnexpectedEOF
		case err == io.EOF:
			return nil
		case err != nil:
			return err
		}
		switch t := token.(type) {
		case xml.StartElement:
			if len(names) == maxDepth {
				return errTooDeep
			}
			names = append(names, t.Name.Local)
			if err := v.open(t.Name.Local, t.Attr); err != nil {
				return err
			}
		case xml.EndElement:
			if len(names) == 0 || names[len(names)-1] != t.Name.Local {
				return fmt.Errorf("%q is closed before it is opened", t.Name.Local)
			}
			names = names[:len(names)-1]
			if v.close != nil {
				v.close(t.Name.Local)
			}
		case xml.CharData:
			if v.text != nil {
				v.text(t)
			}
		case xml.Directive:
			// Nothing that reads or writes workbooks needs one, and what is
			// declared in one can be made to grow without end.
			return errDTD
		}
	}
}

// unescape turns _x000D_ and its kin into the character they stand for.
func unescape(text string) string {
	if !strings.Contains(text, "_x") {
		return text
	}
	var out strings.Builder
	for i := 0; i < len(text); {
		if c, ok := escaped(text[i:]); ok {
			out.WriteRune(c)
			i += 7
			continue
		}
		out.WriteByte(text[i])
		i++
	}
	return out.String()
}

func escaped(text string) (rune, bool) {
	if len(text) < 7 || text[0] != '_' || text[1] != 'x' || text[6] != '_' {
		return 0, false
	}
	var c rune
	for _, digit := range []byte(text[2:6]) {
		at := strings.IndexByte("0123456789abcdef", digit|0x20)
		if digit < '0' || at < 0 {
			return 0, false
		}
		c = c<<4 | rune(at)
	}
	return c, true
}
