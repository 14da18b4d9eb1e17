package engine

import (
	"fmt"
	"math"
	"strings"
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

// paragraph says the headline lines in plain words: middle, range, goal.
func paragraph(r *Reckoning) string {
	var out []string
	for _, a := range r.Lines {
		if !a.Headline || a.P50 == nil {
			continue
		}
		out = append(out, sentence(a))
	}
	if len(out) == 0 {
		return ""
	}
	lead := fmt.Sprintf("Over %s drawn seasons: ", thousands(r.Seasons))
	text := lead + strings.Join(out, " ")
	if n := len(r.Warnings); n > 0 {
		text += fmt.Sprintf(" There %s about the sheet itself.", areWarnings(n))
	}
	return text
}

func sentence(a Answer) string {
	text := fmt.Sprintf("%s comes to %s in the middle season", a.Label, a.Shown.Middle)
	if a.Shown.Low == a.Shown.High {
		text = fmt.Sprintf("%s comes to %s", a.Label, a.Shown.Middle)
	} else {
		text += fmt.Sprintf(", and 8 seasons in 10 fall between %s and %s", a.Shown.Low, a.Shown.High)
	}
	if a.Goal != "" {
		text += fmt.Sprintf("; %s in %s", a.Goal, a.Shown.Goal)
	}
	return text + "."
}

func areWarnings(n int) string {
	if n == 1 {
		return "is 1 warning"
	}
	return fmt.Sprintf("are %d warnings", n)
}

// thousands writes a whole number with commas.
func thousands(n int) string {
	text := fmt.Sprint(n)
	for i := len(text) - 3; i > 0; i -= 3 {
		text = text[:i] + "," + text[i:]
	}
	return text
}
