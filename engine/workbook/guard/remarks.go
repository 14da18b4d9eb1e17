package guard

import (
	"errors"
	"strconv"
	"strings"

	"thawbook/engine/workbook/calc"
)

const (
	maxRemarks = 10_000
	// threadedPart stands at the head of the plain copy that programs keep of a
	// comment that people answer each other in.
	threadedPart = "[Threaded comment]"
)

// remarks reads the comments at a sheet's cells: the plain ones, and those that
// people answer each other in.
func (r *reader) remarks(s *Sheet, target string) error {
	links, err := r.links(target)
	if errors.Is(err, errTooMuch) {
		return nil // the sheet itself was cut short, which has been told
	}
	if err != nil {
		return err
	}
	for _, l := range links {
		if l.outside || l.kind != "comments" && l.kind != "threadedComment" || !r.has(l.target) {
			continue
		}
		err := r.commentsPart(s, l.target)
		if errors.Is(err, errTooMuch) || errors.Is(err, errStop) {
			r.cutShort(s.Name, lastRow)
		} else if err != nil {
			return err
		}
	}
	return nil
}

func (r *reader) commentsPart(s *Sheet, part string) error {
	var authors []string
	var g gathered
	var now *Remark
	inAuthor, number, thread := false, "", false
	return r.walk(part, visitor{
		open: func(name string, attr attributes) error {
			switch name {
			case "author":
				inAuthor = true
			case "comment", "threadedComment":
				if len(s.Remarks) == maxRemarks {
					return errStop
				}
				row, column, _ := calc.Address(attr.get("ref"))
				now, number, thread = &Remark{Row: row, Column: column}, attr.get("authorId"), name == "threadedComment"
				g.Reset()
			case "text":
				if thread { // whose text has no runs
					g.in++
				}
			default:
				g.open(name)
			}
			return nil
		},
		text: func(t []byte) {
			if inAuthor && len(authors) < maxRemarks {
				authors = append(authors, string(t))
			}
			g.add(t)
		},
		close: func(name string) {
			switch name {
			case "author":
				inAuthor = false
			case "text":
				if thread {
					g.in--
				}
			case "comment", "threadedComment":
				if now != nil {
					r.keepRemark(s, now, g.take(), authors, number)
				}
				now, thread = nil, false
			default:
				g.close(name)
			}
		},
	})
}

func (r *reader) keepRemark(s *Sheet, now *Remark, text string, authors []string, number string) {
	now.Text = strings.TrimSpace(text)
	if i, err := strconv.Atoi(number); err == nil && i >= 0 && i < len(authors) {
		now.Author = authors[i]
	}
	if now.Row > 0 && now.Text != "" && !strings.HasPrefix(now.Text, threadedPart) && r.letters > 0 {
		r.letters -= len(now.Text)
		s.Remarks = append(s.Remarks, *now)
	}
}
