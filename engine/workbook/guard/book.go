package guard

import (
	"errors"
	"fmt"
	"path"
	"strings"

	"thawbook/engine/diag"
)

// Limits on what is kept of a workbook.
const (
	MaxCells   = 400_000  // cells that hold something, of all sheets
	maxLetters = 48 << 20 // bytes of their texts and formulas
	maxSheets  = 200
	maxNames   = 100_000
	maxText    = 1 << 20 // bytes of one text
	maxStyles  = 65_536
)

// reader gathers a Book.
type reader struct {
	*parcel
	out     Book
	told    diag.List
	strings []string
	shown   []Shown // by style
	room    int     // cells that may still be kept
	letters int     // bytes that may still be kept
	cut     bool    // told that not all was read
}

func (r *reader) warn(code diag.Code, hint, format string, args ...any) {
	r.told = append(r.told, diag.Diagnostic{Code: code, Severity: diag.Warning, Message: fmt.Sprintf(format, args...), Hint: hint})
}

// damaged is what a part that does not read comes to.
func damaged(err error) *diag.Diagnostic {
	if errors.Is(err, errTooMuch) {
		return refused(diag.WorkbookTooLarge, saveAgain, "the file unpacks to more than may be read: %v", err)
	}
	return refused(diag.WorkbookDamaged, saveAgain, "the file is damaged: %v", err)
}

// sheetPart is a sheet named in the workbook and where its cells are.
type sheetPart struct {
	name, id string
	hidden   bool
}

func (r *reader) book() *diag.Diagnostic {
	main, wrong := r.mainPart()
	if wrong != nil {
		return wrong
	}
	parts, err := r.workbook(main)
	if err != nil {
		return damaged(err)
	}
	links, err := r.links(main)
	if err != nil {
		return damaged(err)
	}
	r.strangers()
	for _, l := range links {
		if err := r.shared(l); err != nil {
			return damaged(err)
		}
	}
	for _, part := range parts {
		link, ok := links[part.id]
		if !ok || link.kind != "worksheet" {
			continue // a chart that is a sheet of its own, or a sheet cut off
		}
		if err := r.sheet(part, link.target); err != nil {
			return damaged(err)
		}
	}
	if len(r.out.Sheets) == 0 {
		return refused(diag.WorkbookDamaged, saveAgain, "the workbook has no sheet that can be read")
	}
	return nil
}

// strangers tells what a plan has no use for and what is not taken along.
func (r *reader) strangers() {
	if r.any("xl/vbaproject") || r.any("xl/macrosheets/") || r.any("xl/activex/") {
		r.warn(diag.MacrosDropped, "none of it was run, and nothing of it is kept", "the workbook carries macros")
	}
	if r.any("xl/externallinks/") || r.has("xl/connections.xml") {
		r.warn(diag.OutsideLinks, "they were not followed; a formula that reads one keeps the number it had", "the workbook links to other files")
	}
}

// mainPart is the part that names the sheets.
func (r *reader) mainPart() (string, *diag.Diagnostic) {
	links, err := r.links("")
	if err != nil && !errors.Is(err, errMissing) {
		return "", damaged(err)
	}
	for _, l := range links {
		if l.kind == "officeDocument" && r.has(l.target) {
			return l.target, nil
		}
	}
	if r.has("xl/workbook.xml") {
		return "xl/workbook.xml", nil
	}
	return "", refused(diag.NotAWorkbook, saveAgain, "the file is a zip, but not a workbook")
}

// link is what one part says of another.
type link struct {
	kind, target string
	outside      bool
}

// links reads which other parts a part names, by their ids.
func (r *reader) links(part string) (map[string]link, error) {
	dir, file := path.Split(part)
	out := map[string]link{}
	err := r.walk(dir+"_rels/"+file+".rels", visitor{open: func(name string, attr attributes) error {
		if name != "Relationship" {
			return nil
		}
		target := strings.ReplaceAll(attr.get("Target"), `\`, "/")
		if strings.HasPrefix(target, "/") {
			target = target[1:]
		} else {
			target = path.Join(dir, target)
		}
		kind := attr.get("Type")
		out[attr.get("Id")] = link{kind[strings.LastIndexByte(kind, '/')+1:], target, attr.get("TargetMode") == "External"}
		if len(out) > maxParts {
			return errTooMuch
		}
		return nil
	}})
	if errors.Is(err, errMissing) && part != "" {
		return out, nil
	}
	return out, err
}

// workbook reads the names of the sheets and the defined names.
func (r *reader) workbook(part string) (sheets []sheetPart, err error) {
	root, text := "", strings.Builder{}
	var naming *Name
	err = r.walk(part, visitor{
		open: func(name string, attr attributes) error {
			if root == "" {
				root = name
			}
			switch name {
			case "workbookPr":
				r.out.From1904 = isTrue(attr.get("date1904"))
			case "sheet":
				if len(sheets) == maxSheets {
					return errTooMuch
				}
				sheets = append(sheets, sheetPart{attr.get("name"), idOf(attr), attr.get("state") == "hidden" || attr.get("state") == "veryHidden"})
			case "definedName":
				text.Reset()
				if attr.get("localSheetId") == "" {
					naming = &Name{Name: attr.get("name")}
				}
			}
			return nil
		},
		text: func(t []byte) {
			if naming != nil && text.Len()+len(t) <= maxText {
				text.Write(t)
			}
		},
		close: func(name string) {
			if name == "definedName" && naming != nil {
				naming.Text = strings.TrimSpace(text.String())
				if len(r.out.Names) < maxNames {
					r.out.Names = append(r.out.Names, *naming)
				}
				naming = nil
			}
		},
	})
	if err == nil && root != "workbook" {
		err = fmt.Errorf("%s: its first element is %q, not a workbook", part, root)
	}
	return sheets, err
}

// idOf is the id by which a sheet's part is named: the one with a prefix.
func idOf(attr attributes) string {
	for _, a := range attr {
		if a.Name.Local == "id" && a.Name.Space != "" {
			return a.Value
		}
	}
	return ""
}

func isTrue(text string) bool { return text == "1" || text == "true" }

func equalFold(a, b string) bool { return strings.EqualFold(a, b) }
