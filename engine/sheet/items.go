package sheet

import (
	"strings"

	"go.yaml.in/yaml/v3"
)

// item is a mapping in a list: a line, a table, one of its columns or rows.
type item struct {
	what   string
	holder *yaml.Node // the mapping that has the list under key
	key    string
	list   *yaml.Node
	index  int
	path   string
}

func (i item) node() *yaml.Node { return i.list.Content[i.index] }

// hasColumn says whether the table a row stands in has a column, in this file.
func (i item) hasColumn(id string) bool {
	for _, column := range each(lookUp(i.holder, "columns"), "") {
		if hasID(column, id) {
			return true
		}
	}
	return false
}

// ownItem finds a line, a table, a column or a row that this file writes.
func (d *Doc) ownItem(id string) (item, bool) {
	first, second, dotted := strings.Cut(id, ".")
	for path, chapter := range each(lookUp(d.root, d.chaptersKey()), "/"+d.chaptersKey()) {
		if line, found := itemWith(first, "a line", chapter, "lines", path); found && !dotted {
			return line, true
		}
		table, found := itemWith(first, "a table", chapter, "tables", path)
		if found && !dotted {
			return table, true
		}
		if !found {
			continue
		}
		if column, found := itemWith(second, "a column", table.node(), "columns", table.path); found {
			return column, true
		}
		if row, found := itemWith(second, "a row", table.node(), "rows", table.path); found {
			return row, true
		}
	}
	return item{}, false
}

// chaptersKey is the key under which the file's own chapters stand.
func (d *Doc) chaptersKey() string {
	if d.head.from != nil {
		return "add"
	}
	return "chapters"
}

func itemWith(id, what string, holder *yaml.Node, key, path string) (item, bool) {
	list := lookUp(holder, key)
	index := 0
	for path, n := range each(list, path+"/"+key) {
		if hasID(n, id) {
			return item{what, holder, key, list, index, path}, true
		}
		index++
	}
	return item{}, false
}

// inherits says whether a table of that id comes from another file, so that this
// one's add only contributes to it.
func (d *Doc) inherits(in *Sheet, id string) bool {
	if in == nil {
		return false
	}
	t := in.Table(id)
	return t != nil && t.Place.File != d.name
}

// each goes through a list's items and their paths.
func each(list *yaml.Node, path string) func(func(string, *yaml.Node) bool) {
	return func(yield func(string, *yaml.Node) bool) {
		if list == nil || list.Kind != yaml.SequenceNode {
			return
		}
		for i, item := range list.Content {
			if !yield(itemPath(path, item, i), item) {
				return
			}
		}
	}
}

func hasID(n *yaml.Node, id string) bool {
	value := lookUp(n, "id")
	return value != nil && strings.TrimSpace(value.Value) == id
}
