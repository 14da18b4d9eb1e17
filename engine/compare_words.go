package engine

import (
	"cmp"
	"fmt"
	"math"
	"path"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"thawbook/engine/units"
)

// shortTitles are the books' titles without the words that all of them begin
// with, up to a comma or colon. Where two would be alike, the name of the file
// says which is which.
func shortTitles(books []*Book) []string {
	var titles []string
	for _, b := range books {
		titles = append(titles, b.sheet.Title)
	}
	shared := titles[0]
	for _, title := range titles[1:] {
		for !strings.HasPrefix(title, shared) {
			_, size := utf8.DecodeLastRuneInString(shared)
			shared = shared[:len(shared)-size]
		}
	}
	cut := 0
	for _, mark := range []string{", ", ": "} {
		if at := strings.LastIndex(shared, mark); at >= 0 {
			cut = max(cut, at+len(mark))
		}
	}
	for k, title := range titles {
		titles[k] = title[cut:]
	}
	count := map[string]int{}
	for _, title := range titles {
		count[title]++
	}
	for k, title := range titles {
		if title == "" || count[title] > 1 {
			titles[k] = strings.TrimPrefix(title+" ("+path.Base(books[k].name)+")", " ")
		}
	}
	return titles
}

// differenceSentence says one difference: its middle, its range, and in how many
// seasons the scenario comes out ahead.
func differenceSentence(l ComparedLine, d ComparedDifference, first, other string) string {
	if d.P50 == nil {
		return fmt.Sprintf("%s cannot be compared: no season came to a number in both.", l.Label)
	}
	other = upperFirst(other)
	if *d.Even == 1 {
		return fmt.Sprintf("%s and %s come to the same in every season.", other, first)
	}
	var text string
	switch {
	case d.Shown.Low == d.Shown.High:
		text = fmt.Sprintf("%s comes to %s than %s.", other, d.Shown.Middle, first)
	case *d.P50 == 0:
		text = fmt.Sprintf("%s and %s come to the same in the middle season; 8 seasons in 10 fall between %s.", other, first, apartWords(d))
	default:
		text = fmt.Sprintf("%s comes to %s than %s in the middle season; 8 seasons in 10 fall between %s.", other, d.Shown.Middle, first, apartWords(d))
	}
	return text + " " + aheadSentence(d, first)
}

// apartWords says the range of a difference, the word that both ends share once.
func apartWords(d ComparedDifference) string {
	low, high := d.Shown.Low, d.Shown.High
	if *d.P90 <= 0 {
		low, high = high, low // from the smaller difference to the larger
	}
	for _, word := range []string{" more", " less"} {
		if strings.HasSuffix(low, word) && strings.HasSuffix(high, word) {
			low = strings.TrimSuffix(low, word)
		}
	}
	return low + " and " + high
}

func aheadSentence(d ComparedDifference, first string) string {
	text := "It comes to more in " + seasonsOfTen(d.More)
	if d.Ahead != nil {
		text = "It comes out ahead in " + seasonsOfTen(d.Ahead)
	}
	if *d.Even >= 0.05 {
		text += ", and even in " + strings.TrimSuffix(seasonsOfTen(d.Even), " of 10")
	}
	// Where one side never comes out ahead, that says more than this would.
	if d.Dominance != "" && d.Ahead != nil && *d.Ahead > 0 && *d.Behind > 0 {
		who := first
		if *d.Ahead > *d.Behind {
			who = "it"
		}
		text += fmt.Sprintf("; from the worst season to the best, rank for rank, %s does at least as well", who)
	}
	return text + "."
}

// mostNamed is how many changes an explanation names.
const mostNamed = 4

// worthNaming picks the largest effects, by about and label. What is under a
// hundredth of the largest is not worth a word.
func worthNaming(effects []Explained) map[string]bool {
	bySize := slices.Clone(effects)
	slices.SortStableFunc(bySize, func(a, b Explained) int {
		return cmp.Compare(math.Abs(*b.Mean), math.Abs(*a.Mean))
	})
	named := map[string]bool{}
	for _, e := range bySize[:min(mostNamed, len(bySize))] {
		if math.Abs(*e.Mean) >= math.Abs(*bySize[0].Mean)/100 {
			named[e.About+e.Label] = true
		}
	}
	return named
}

// explanationWords says what the mean of a difference comes from: the largest
// effects in the order of the file, the rest summed.
func explanationWords(d ComparedDifference, apart units.Unit) string {
	if d.Mean == nil || len(d.Explained) == 0 {
		return ""
	}
	named := worthNaming(d.Explained)
	var parts []string
	others, sum := 0, 0.0
	for _, e := range d.Explained {
		if named[e.About+e.Label] {
			parts = append(parts, fmt.Sprintf("%s (%s)", lowerFirst(e.Label), e.Shown))
			continue
		}
		others++
		sum += *e.Mean
	}
	if len(d.Explained) == 1 && *d.Together.Mean == 0 {
		return fmt.Sprintf("The mean is %s, all of it from %s.", d.Shown.Mean, lowerFirst(d.Explained[0].Label))
	}
	if others > 0 {
		parts = append(parts, fmt.Sprintf("%s (%s)", several(others, "smaller change"), byWords(&sum, apart)))
	}
	if *d.Together.Mean != 0 {
		parts = append(parts, fmt.Sprintf("what they do only together (%s)", d.Together.Shown))
	}
	return fmt.Sprintf("The mean is %s: %s.", d.Shown.Mean, listed(parts))
}

// comparedParagraph says how each scenario does beside the first. Labels may hold
// commas, so semicolons part them.
func comparedParagraph(c *Comparison) string {
	var out []string
	for k := 1; k < len(c.Scenarios); k++ {
		better, worse, balance := sortedOut(c, k)
		var parts []string
		for _, part := range []struct {
			lead string
			list []string
		}{{"Nearly always as good or better: ", better}, {"Nearly always as good or worse: ", worse}, {"In the balance: ", balance}} {
			if len(part.list) > 0 {
				parts = append(parts, part.lead+strings.Join(part.list, "; ")+".")
			}
		}
		if len(parts) > 0 {
			out = append(out, upperFirst(c.Scenarios[k].Short)+" beside "+c.Scenarios[0].Short+". "+strings.Join(parts, " "))
		}
	}
	return strings.Join(out, " ")
}

// rarely is the share of the seasons up to which something happens in "1 season
// of 10" or fewer.
const rarely = 0.15

// sortedOut are the labels of the lines on which scenario k rarely falls behind
// the first, or rarely comes out ahead, and the others.
func sortedOut(c *Comparison, k int) (better, worse, balance []string) {
	for _, l := range c.Lines {
		d := l.Difference[k-1]
		label := lowerFirst(l.Label)
		switch {
		case d.Ahead == nil || *d.Even == 1:
		case *d.Behind < rarely && *d.Ahead >= *d.Behind:
			better = append(better, label)
		case *d.Ahead < rarely:
			worse = append(worse, label)
		default:
			balance = append(balance, label+" (ahead in "+d.Shown.Ahead+")")
		}
	}
	return better, worse, balance
}

// listed is "a, b and c", or "nothing".
func listed(names []string) string {
	switch n := len(names); n {
	case 0:
		return "nothing"
	case 1:
		return names[0]
	default:
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
}

func upperFirst(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

func several(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
