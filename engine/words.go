package engine

import (
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"
)

// seasonsOfTen says a share of the seasons as people count: "9 seasons of 10".
func seasonsOfTen(share *float64) string {
	if share == nil {
		return ""
	}
	tenths := int(math.Round(*share * 10))
	switch {
	case *share == 0:
		return "no season of 10"
	case *share == 1:
		return "10 seasons of 10"
	case *share < 0.05:
		return "fewer than 1 season of 10"
	case *share > 0.95:
		return "more than 9 seasons of 10"
	case tenths == 1:
		return "1 season of 10"
	}
	return fmt.Sprintf("%d seasons of 10", tenths)
}

// paragraph says the headline lines in plain words: the middle season, the bad
// season in 10, and how often the goals are met.
func paragraph(headlines []Answer, warnings int) string {
	var middle, bad, goals []string
	for _, a := range headlines {
		if a.P50 == nil {
			continue
		}
		label := lowerFirst(a.Label)
		middle = append(middle, label+" "+a.Shown.Middle)
		if a.Better == "more" && a.Shown.Low != a.Shown.Middle {
			bad = append(bad, label+" "+a.Shown.Low)
		} else if a.Better == "less" && a.Shown.High != a.Shown.Middle {
			bad = append(bad, label+" "+a.Shown.High)
		}
		if a.Goal != "" {
			goals = append(goals, label+" "+a.Goal+" in "+a.Shown.Goal)
		}
	}
	var text []string
	for _, part := range []struct {
		lead string
		list []string
	}{{"In the middle season: ", middle}, {"One season in 10 is worse than this: ", bad}, {"The goals: ", goals}} {
		if len(part.list) > 0 {
			text = append(text, part.lead+strings.Join(part.list, "; ")+".")
		}
	}
	if n := warnings; n > 0 && len(text) > 0 {
		text = append(text, fmt.Sprintf("There %s to read first.", areWarnings(n)))
	}
	return strings.Join(text, " ")
}

// lowerFirst lets a label stand inside a sentence, unless it starts with a name
// in capitals.
func lowerFirst(label string) string {
	first, size := utf8.DecodeRuneInString(label)
	if second, _ := utf8.DecodeRuneInString(label[size:]); unicode.IsUpper(second) {
		return label
	}
	return string(unicode.ToLower(first)) + label[size:]
}

func areWarnings(n int) string {
	if n == 1 {
		return "is 1 warning"
	}
	return fmt.Sprintf("are %d warnings", n)
}
