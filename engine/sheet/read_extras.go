package sheet

import (
	"strconv"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// among reads what a choice chooses among: a table's id, or names.
func (r *reader) among(l *Line, n *yaml.Node) {
	if n.Kind == yaml.ScalarNode && !isNull(n) {
		l.AmongTable = r.id(n, idFault)
		return
	}
	seen := map[string]bool{}
	for _, item := range r.items(n, `"among"`) {
		name := r.name(item)
		switch {
		case name.ID == "":
		case seen[name.ID]:
			r.tell(diag.DuplicateID, item, "delete one of the two", "%s is there twice to choose", quote(name.ID))
		default:
			seen[name.ID] = true
			l.Among = append(l.Among, name)
		}
	}
	if len(l.Among) == 0 {
		r.tell(diag.MissingKey, n, "among: [wood, propane], or the id of a table", "there is nothing to choose among")
	}
}

// name reads one name: an id, or an id and a label.
func (r *reader) name(n *yaml.Node) Name {
	var name Name
	if n.Kind != yaml.MappingNode {
		name.ID = r.id(n, idFault)
		name.Label = labelFrom(name.ID)
		return name
	}
	for _, e := range r.entries(n, "a name") {
		switch e.key {
		case "id":
			name.ID = r.id(e.value, idFault)
		case "label":
			name.Label = r.text(e.value)
		default:
			r.unknown(e, "a name", []string{"id", "label"})
		}
	}
	if lookUp(n, "id") == nil {
		r.tell(diag.MissingKey, n, "{id: wood, label: Old pallets}", "the name has no id")
	}
	if name.Label == "" {
		name.Label = labelFrom(name.ID)
	}
	return name
}

func (r *reader) movesWith(n *yaml.Node) []Moves {
	var out []Moves
	for _, e := range r.entries(n, `"moves_with"`) {
		rank, ok := r.number(e.value)
		if ok && (rank < -0.99 || rank > 0.99) {
			r.tell(diag.OutOfBounds, e.value, "-0.99 to 0.99; 0.6 is close company", "a rank correlation cannot be %s", e.value.Value)
			ok = false
		}
		if ok {
			out = append(out, Moves{e.key, rank})
		}
	}
	return out
}

func (r *reader) headline(n *yaml.Node) *Headline {
	if yes, told := r.truth(n); told {
		if yes {
			return &Headline{}
		}
		return nil
	}
	if n.Kind != yaml.MappingNode {
		r.tell(diag.WrongKind, n, "headline: true, or {better: more, goal: {at_least: 20}}", "a headline is true or a mapping, not %s", describe(n))
		return nil
	}
	h := &Headline{}
	for _, e := range r.entries(n, "a headline") {
		switch e.key {
		case "better":
			if h.Better = r.text(e.value); h.Better != "more" && h.Better != "less" {
				r.tell(diag.WrongKind, e.value, "more or less", "better is more or less, not %s", describe(e.value))
				h.Better = ""
			}
		case "goal":
			h.Goal = r.goal(e.value)
		default:
			r.unknown(e, "a headline", []string{"better", "goal"})
		}
	}
	return h
}

func (r *reader) goal(n *yaml.Node) *Goal {
	g := &Goal{}
	for _, e := range r.entries(n, "a goal") {
		switch e.key {
		case "at_least":
			g.AtLeast = r.optional(e.value)
		case "at_most":
			g.AtMost = r.optional(e.value)
		default:
			r.unknown(e, "a goal", []string{"at_least", "at_most"})
		}
	}
	switch {
	case g.AtLeast == nil && g.AtMost == nil:
		if n.Kind == yaml.MappingNode && len(n.Content) == 0 {
			r.tell(diag.MissingKey, n, "goal: {at_least: 20}", "the goal says nothing")
		}
		return nil
	case g.AtLeast != nil && g.AtMost != nil && *g.AtLeast > *g.AtMost:
		r.tell(diag.OutOfBounds, n, "swap them", "no number is at least %s and at most %s", FormatNumber(*g.AtLeast), FormatNumber(*g.AtMost))
	}
	return g
}

func (r *reader) layIn(n *yaml.Node) *LayIn {
	if yes, told := r.truth(n); told {
		if yes {
			return &LayIn{Round: 1}
		}
		return nil
	}
	if n.Kind != yaml.MappingNode {
		r.tell(diag.WrongKind, n, "lay_in: true, or {unit: box, round: 1}", `"lay_in" is true or a mapping, not %s`, describe(n))
		return nil
	}
	l := &LayIn{Round: 1}
	for _, e := range r.entries(n, `"lay_in"`) {
		switch e.key {
		case "unit":
			l.Unit = r.text(e.value)
		case "round":
			if x, ok := r.number(e.value); ok && x > 0 {
				l.Round = x
			} else if ok {
				r.tell(diag.OutOfBounds, e.value, "1 for whole things", "nothing can be rounded up to %s", e.value.Value)
			}
		case "on_hand":
			l.OnHand = r.optional(e.value)
		case "price":
			l.Price = r.text(e.value)
		default:
			r.unknown(e, `"lay_in"`, []string{"unit", "round", "on_hand", "price"})
		}
	}
	return l
}

// FormatNumber is the shortest text that reads back as x, without an exponent
// for numbers of ordinary size. It is how numbers are written into a sheet. x
// must be finite.
func FormatNumber(x float64) string {
	if size := max(x, -x); size != 0 && (size < 1e-6 || size >= 1e15) {
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	return strconv.FormatFloat(x+0, 'f', -1, 64)
}
