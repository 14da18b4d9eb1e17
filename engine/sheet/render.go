package sheet

import (
	"fmt"
	"strings"
	"unicode"

	"go.yaml.in/yaml/v3"
)

// render is a setting's value as YAML, inside brackets when flow. A text keeps
// the quotes that the text it replaces, old, is written in.
func (s setting) render(flow bool, old *yaml.Node) string {
	switch {
	case s.number != nil:
		return FormatNumber(*s.number)
	case s.guess != nil:
		return "{low: " + FormatNumber(s.guess.Low) + ", likely: " + FormatNumber(s.guess.Likely) + ", high: " + FormatNumber(s.guess.High) + "}"
	case s.records != nil:
		numbers := make([]string, len(s.records))
		for i, x := range s.records {
			numbers[i] = FormatNumber(x)
		}
		return "[" + strings.Join(numbers, ", ") + "]"
	case s.text != nil:
		return renderText(*s.text, flow, old)
	}
	return s.whole
}

// renderText writes text plain when that is safe, else in quotes.
func renderText(text string, flow bool, old *yaml.Node) string {
	quoted := old != nil && old.Style&yaml.DoubleQuotedStyle != 0
	single := old != nil && old.Style&yaml.SingleQuotedStyle != 0
	switch {
	case single && printable(text):
		return "'" + strings.ReplaceAll(text, "'", "''") + "'"
	case !quoted && !single && plainSafe(text, flow):
		return text
	}
	return doubleQuoted(text)
}

// plainSafe says whether text without quotes reads back as itself.
func plainSafe(text string, flow bool) bool {
	if text == "" || !printable(text) || strings.TrimSpace(text) != text {
		return false
	}
	if strings.ContainsRune("-?:,[]{}#&*!|>'\"%@`", rune(text[0])) && !negative(text) {
		return false
	}
	if strings.Contains(text, ": ") || strings.Contains(text, " #") || strings.HasSuffix(text, ":") {
		return false
	}
	// A table look-up or a condition is cut short inside brackets.
	if flow && strings.ContainsAny(text, ",?[]{}") {
		return false
	}
	switch strings.ToLower(text) {
	case "null", "~", "true", "false", "<<", "=":
		return false
	}
	return true
}

// negative says whether text begins with a minus sign, rather than a dash.
func negative(text string) bool {
	return len(text) > 1 && text[0] == '-' && text[1] != ' ' && text[1] != '-'
}

// printable says whether text is one line of characters that need no escape.
func printable(text string) bool {
	for _, c := range text {
		if !unicode.IsPrint(c) || c == '\uFEFF' {
			return false
		}
	}
	return true
}

func doubleQuoted(text string) string {
	var out strings.Builder
	out.WriteByte('"')
	for _, c := range text {
		switch {
		case c == '"' || c == '\\':
			out.WriteByte('\\')
			out.WriteRune(c)
		case c == '\n':
			out.WriteString(`\n`)
		case c == '\t':
			out.WriteString(`\t`)
		case unicode.IsPrint(c) && c != '\uFEFF':
			out.WriteRune(c)
		case c > 0xFFFF:
			fmt.Fprintf(&out, `\U%08X`, c)
		default:
			fmt.Fprintf(&out, `\u%04X`, c)
		}
	}
	out.WriteByte('"')
	return out.String()
}
