package sheet

import (
	"fmt"
	"strings"
)

func replaceOnce(text, from, to string) string { return strings.Replace(text, from, to, 1) }

// files is a load function over texts by name.
func files(texts map[string]string) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		if source, ok := texts[name]; ok {
			return []byte(source), nil
		}
		return nil, fmt.Errorf("no file %s", name)
	}
}
