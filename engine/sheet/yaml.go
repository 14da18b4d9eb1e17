package sheet

import (
	"bytes"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// readYAML is the tree of a file, or why there is none. The marks are there even
// then, unless the file is too large to look at.
func readYAML(source []byte) (root *yaml.Node, m *marks, f *fault) {
	if len(source) > MaxBytes {
		return nil, nil, &fault{diag.FileTooLarge, 0,
			fmt.Sprintf("the file has %d bytes, a sheet at most %d", len(source), MaxBytes), "a season's plan is a few pages of text"}
	}
	m, f = scan(string(source))
	if f != nil {
		return nil, m, f
	}
	// The library panics on a few malformed texts it has no message for.
	defer func() {
		if recover() != nil {
			root, f = nil, &fault{diag.YAMLSyntax, m.lines[0], "the file cannot be read as YAML", "look for a comment or indentation that stands oddly"}
		}
	}()
	var doc, more yaml.Node
	documents := yaml.NewDecoder(bytes.NewReader(source))
	switch err := documents.Decode(&doc); {
	case err == io.EOF:
		return nil, m, &fault{diag.NotASheet, m.lines[0], "the file is empty", `a sheet begins with "thawbook: 1"`}
	case err != nil:
		return nil, m, m.yamlFault(err)
	}
	// The library would pass over what follows a whole document.
	switch err := documents.Decode(&more); {
	case err == nil:
		return nil, m, &fault{diag.YAMLSyntax, m.offset(more.Line, more.Column), "this stands outside the sheet", "line it up with the keys above"}
	case err != io.EOF:
		return nil, m, m.yamlFault(err)
	}
	return doc.Content[0], m, nil
}

var yamlError = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)

// yamlFault puts the library's message in our words, at the line it means.
func (m *marks) yamlFault(err error) *fault {
	parts := yamlError.FindStringSubmatch(err.Error())
	if parts == nil {
		return &fault{diag.YAMLSyntax, m.lines[0], "the file cannot be read as YAML", err.Error()}
	}
	line, _ := strconv.Atoi(parts[1])
	message, hint, parser := yamlMessage(parts[2])
	if parser {
		line++ // the library counts these from 0
	}
	line = min(max(line, 1), len(m.lines))
	at := m.lines[line-1]
	for at < len(m.text) && m.text[at] == ' ' {
		at++
	}
	return &fault{diag.YAMLSyntax, at, message, hint}
}

// yamlMessage says what a message of the library means for a sheet, and whether
// the library's parser wrote it, rather than its scanner.
func yamlMessage(text string) (message, hint string, parser bool) {
	switch {
	case strings.Contains(text, "could not find expected ':'"):
		return `a key lacks its ":"`, "write key: value", false
	case strings.Contains(text, "unknown escape character"):
		return `a "\" in double quotes begins something unknown`, `write \\ for the character itself, or use single quotes`, false
	case strings.Contains(text, "tab character"):
		return "a tab stands where only spaces indent", "use spaces", false
	case strings.Contains(text, "did not find expected"):
		return "the indentation does not fit what stands above", "line it up with its neighbours", true
	}
	return "the file cannot be read as YAML: " + text, "check the indentation and quotes", false
}
