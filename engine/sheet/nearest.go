package sheet

import (
	"strings"
	"unicode/utf8"

	"thawbook/engine/diag"
)

// nearest is diag's did-you-mean hint, or what else can be said.
func nearest(word string, candidates []string) string {
	if hint := diag.Nearest(word, candidates); hint != "" {
		return hint
	}
	return "check the spelling"
}

// quote puts a person's text in quotes, cut where it would flood a message.
func quote(text string) string {
	const most = 60
	if utf8.RuneCountInString(text) > most {
		text = string([]rune(text)[:most]) + "…"
	}
	return `"` + strings.Join(strings.Fields(text), " ") + `"`
}
