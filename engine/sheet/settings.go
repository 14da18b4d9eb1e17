package sheet

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"thawbook/engine/diag"
)

// setting is one key to write. Exactly one of number, guess, records, whole and
// text says what.
type setting struct {
	key     string
	number  *float64
	guess   *GuessValue
	records []float64
	whole   string
	text    *string
}

func (s setting) isKind() bool { return slices.Contains(kindKeys, s.key) }

// empty says whether the setting takes its key out.
func (s setting) empty() bool {
	return s.text != nil && *s.text == "" && slices.Contains([]string{"label", "note", "source", "title", "about"}, s.key)
}

// settings is what a Set asks for, the line's kind first: the rest may need it to
// be there. It tells what no sheet can say.
func (set Set) settings() ([]setting, diag.List) {
	out := set.kinds()
	var list diag.List
	tell := func(code diag.Code, hint, format string, args ...any) {
		list = append(list, *refuse(code, hint, format, args...))
	}
	if len(out) > 1 {
		tell(diag.SeveralKinds, "set one of them", "a line cannot be both %q and %q", out[0].key, out[1].key)
	}
	out = append(out, set.others()...)
	for i, s := range out {
		if !s.finite() {
			tell(diag.WrongKind, "give a plain number", "%q must be a number that is not infinite", s.key)
		}
		if s.text == nil {
			continue
		}
		clean := strings.TrimSpace(strings.ReplaceAll(*s.text, "\r\n", "\n"))
		if !utf8.ValidString(clean) {
			tell(diag.WrongKind, "give plain text", "%q must be text", s.key)
		}
		if s.key == "formula" && clean == "" {
			tell(diag.WrongKind, "formula: taps * sap_per_tap", "the formula is empty")
		}
		out[i].text = &clean
	}
	if set.Seasons != nil && (*set.Seasons < 1 || *set.Seasons > MaxSeasons) {
		tell(diag.OutOfBounds, "1 to 1,000,000", "a sheet cannot have %d seasons", *set.Seasons)
	}
	return out, list
}

func (set Set) kinds() []setting {
	var out []setting
	if set.Is != nil {
		out = append(out, setting{key: "is", number: set.Is})
	}
	if set.Guess != nil {
		out = append(out, setting{key: "guess", guess: set.Guess})
	}
	if set.Records != nil {
		out = append(out, setting{key: "records", records: set.Records})
	}
	if set.Choose != nil {
		out = append(out, setting{key: "choose", text: set.Choose})
	}
	if set.Formula != nil {
		out = append(out, setting{key: "formula", text: set.Formula})
	}
	return out
}

func (set Set) others() []setting {
	var out []setting
	for _, t := range []struct {
		key  string
		text *string
	}{{"unit", set.Unit}, {"label", set.Label}, {"note", set.Note}, {"source", set.Source}, {"title", set.Title}, {"about", set.About}} {
		if t.text != nil {
			out = append(out, setting{key: t.key, text: t.text})
		}
	}
	if set.Floor != nil {
		out = append(out, setting{key: "floor", number: set.Floor})
	}
	if set.Ceiling != nil {
		out = append(out, setting{key: "ceiling", number: set.Ceiling})
	}
	if set.Seasons != nil {
		out = append(out, setting{key: "seasons", whole: strconv.Itoa(*set.Seasons)})
	}
	if set.Seed != nil {
		out = append(out, setting{key: "seed", whole: strconv.FormatUint(*set.Seed, 10)})
	}
	return out
}

// finite says whether all the setting's numbers can be written.
func (s setting) finite() bool {
	numbers := slices.Clone(s.records)
	if s.number != nil {
		numbers = append(numbers, *s.number)
	}
	if s.guess != nil {
		numbers = append(numbers, s.guess.Low, s.guess.Likely, s.guess.High)
	}
	return !slices.ContainsFunc(numbers, func(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) })
}
