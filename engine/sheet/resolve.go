package sheet

import (
	"fmt"
	"path"
	"strings"

	"thawbook/engine/diag"
)

// Resolve follows `from` to the sheet doc is taken from, applies the changes of
// every scenario on the way, and checks the whole. load gets the name of a file
// beside doc's own ("plans/base.yaml" when "plans/dry.yaml" says from: base.yaml)
// and gives its bytes; it is not called for a sheet of its own.
//
// The sheet is never nil. It is fit to be reckoned only when neither Parse nor
// Resolve told an error; otherwise it holds what could be understood, for
// showing. The list does not repeat what Parse told of doc itself, but has what
// it told of the files doc is taken from.
func Resolve(doc *Doc, load func(name string) ([]byte, error)) (*Sheet, diag.List) {
	chain, whole, list := follow(doc, load)
	b := &builder{ids: map[string]owner{}, lax: !whole, list: list}
	for _, d := range chain {
		b.apply(d)
	}
	s := b.finish(chain)
	b.list.Sort()
	return s, b.list
}

// follow is doc and what it is taken from, the furthest first. whole is false
// when the first is missing, so that names nobody knows may well be there.
func follow(doc *Doc, load func(string) ([]byte, error)) (chain []*Doc, whole bool, list diag.List) {
	seen := map[string]bool{path.Clean(doc.name): true}
	names := []string{doc.name}
	for chain = []*Doc{doc}; doc.head.from != nil; chain = append([]*Doc{doc}, chain...) {
		name := beside(doc.name, *doc.head.from)
		tell := func(code diag.Code, hint, format string, args ...any) {
			list = append(list, diag.Diagnostic{Code: code, Severity: diag.Error, Place: doc.head.places["from"],
				Message: fmt.Sprintf(format, args...), Hint: hint})
		}
		names = append(names, name)
		if seen[name] {
			tell(diag.FromCircle, "one of them must be a sheet of its own", "the sheets are taken from each other: %s", strings.Join(names, ", "))
			return chain, false, list
		}
		seen[name] = true
		if len(chain) > MaxChain {
			tell(diag.TooMany, "take it from a sheet further up", "more than %d scenarios are taken from each other", MaxChain)
			return chain, false, list
		}
		source, err := load(name)
		if err != nil {
			tell(diag.FromMissing, err.Error(), "the sheet %s cannot be read", quote(name))
			return chain, false, list
		}
		base, told := Parse(name, source)
		list = append(list, told...)
		if base == nil {
			tell(diag.FromMissing, "put that file right first", "the sheet %s cannot be read", quote(name))
			return chain, false, list
		}
		doc = base
	}
	return chain, true, list
}

// beside is the name of a file that another names.
func beside(file, from string) string {
	if path.IsAbs(from) {
		return path.Clean(from)
	}
	return path.Join(path.Dir(file), from)
}
