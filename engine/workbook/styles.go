package workbook

import "github.com/xuri/excelize/v2"

// Colours: dark enough on light enough to be read in sun and in print.
const (
	inkDark, inkSoft, inkCare = "2B2118", "6B5B4A", "8A1C1C"
	fillInput, fillFree       = "FFF1C9", "F1F6E8"
	fillHead, fillChapter     = "5A3A1B", "E9DCC6"
	fillHeld                  = "EDEAE4"
	lineSoft, lineInput       = "C9B79C", "B38A2E"
)

// styles makes each style once.
type styles struct {
	f    *excelize.File
	made map[style]int
}

func (s *styles) id(st style) (int, error) {
	if id, ok := s.made[st]; ok {
		return id, nil
	}
	id, err := s.f.NewStyle(describe(st))
	if err == nil {
		s.made[st] = id
	}
	return id, err
}

// describe is a style in the library's terms.
func describe(st style) *excelize.Style {
	out := &excelize.Style{
		Font:       &excelize.Font{Size: 11, Color: inkDark, Family: fontName},
		Alignment:  &excelize.Alignment{Vertical: "top", WrapText: st.look.wraps()},
		Protection: &excelize.Protection{Locked: st.look != input && st.look != choice && st.look != free},
	}
	if st.format != "" {
		format := st.format
		out.CustomNumFmt = &format
	}
	numbers := func() { out.Alignment = &excelize.Alignment{Vertical: "top", Horizontal: "right"} }
	// Words beside a number would otherwise touch it.
	indented := func() { out.Alignment.Horizontal, out.Alignment.Indent = "left", 1 }
	switch st.look {
	case title:
		out.Font.Size, out.Font.Bold = 16, true
	case heading:
		out.Font.Bold, out.Font.Color = true, "FFFFFF"
		out.Fill = filled(fillHead)
	case chapter:
		out.Font.Bold = true
		out.Fill = filled(fillChapter)
	case faint, faintInChapter:
		out.Font.Size, out.Font.Color = 8, "D8CDBB"
		if st.look == faintInChapter {
			out.Fill, out.Font.Color = filled(fillChapter), "CDBB9C"
		}
	case wrapped, flat:
		indented()
	case input:
		numbers()
		out.Fill, out.Border = filled(fillInput), boxed(lineInput)
	case choice:
		out.Font.Bold = true
		out.Fill, out.Border = filled(fillInput), boxed(lineInput)
	case free:
		out.Fill, out.Border = filled(fillFree), boxed(lineSoft)
	case worked, standing:
		numbers()
		if st.look == standing {
			out.Font.Color = inkSoft
		}
	case held:
		numbers()
		out.Fill, out.Font.Italic = filled(fillHeld), true
	case small, marked:
		out.Font.Size, out.Font.Color = 9, inkSoft
		indented()
	case care:
		out.Font.Color = inkCare
	}
	return out
}

// fontName is a face that every system has or has one of the same widths for.
const fontName = "Arial"

func filled(color string) excelize.Fill {
	return excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{color}}
}

func boxed(color string) []excelize.Border {
	var out []excelize.Border
	for _, side := range []string{"left", "right", "top", "bottom"} {
		out = append(out, excelize.Border{Type: side, Color: color, Style: 1})
	}
	return out
}
