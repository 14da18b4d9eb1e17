package sheet

import (
	"math"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// Keys a line may have, where it stands.
var (
	kindKeys      = []string{"is", "guess", "records", "choose", "formula"}
	optionalKeys  = []string{"note", "source", "caution", "floor", "ceiling", "shape", "moves_with", "headline", "lay_in"}
	lineKeys      = slices.Concat([]string{"id", "label", "unit", "among"}, kindKeys, optionalKeys)
	changeKeys    = lineKeys[1:]
	cellKeys      = slices.Concat([]string{"is", "guess", "records", "formula"}, optionalKeys)
	elevationKeys = []string{"is", "guess", "records", "unit", "note", "source", "shape", "floor", "ceiling"}
	shapes        = []string{"triangle", "pert", "normal", "lognormal", "even"}
)

// line reads one line; nil when there is none to speak of.
func (r *reader) line(n *yaml.Node) *Line {
	entries := r.entries(n, "a line")
	if entries == nil || !r.room(n) {
		return nil
	}
	l := &Line{Place: r.place(n), Places: map[string]diag.Place{}}
	if id := lookUp(n, "id"); id != nil {
		l.ID = r.id(id, functionFault)
		r.about = l.ID
	} else {
		r.tell(diag.MissingKey, n, "id: taps", "the line has no id")
	}
	r.lineKeys(l, entries, lineKeys)
	r.needsKind(l, n)
	if l.Label == "" {
		l.Label = labelFrom(l.ID)
	}
	r.about = ""
	return l
}

// elevation reads the sheet's elevation as the line it is.
func (r *reader) elevation(n *yaml.Node) *Line {
	r.about = "elevation"
	l := &Line{ID: "elevation", Label: "Elevation", Place: r.place(n), Places: map[string]diag.Place{}}
	r.lineKeys(l, r.entries(n, `"elevation"`), elevationKeys)
	r.needsKind(l, n)
	r.about = ""
	return l
}

// room counts a line and says whether the sheet may have it.
func (r *reader) room(n *yaml.Node) bool {
	r.lines++
	if r.lines == MaxLines+1 {
		r.tell(diag.TooMany, n, "split the plan into several sheets", "the file has more than %d lines and cells", MaxLines)
	}
	return r.lines <= MaxLines
}

// labelFrom makes a label of an id that has none: "sap_per_tap" is "Sap per tap".
func labelFrom(id string) string {
	if id == "" {
		return ""
	}
	text := strings.ReplaceAll(id, "_", " ")
	return strings.ToUpper(text[:1]) + text[1:]
}

// lineKeys reads a line's keys into l, among those allowed where it stands. It
// tells a second kind; a first one is needsKind's to ask for.
func (r *reader) lineKeys(l *Line, entries []entry, allowed []string) {
	for _, e := range entries {
		switch {
		case e.key == "unit" && !slices.Contains(allowed, e.key):
			r.tell(diag.UnknownKey, e.at, "its column gives the unit", "a cell has no unit of its own")
		case !slices.Contains(allowed, e.key):
			r.unknown(e, "a line here", allowed)
		case slices.Contains(kindKeys, e.key) && l.Kind != "":
			r.tell(diag.SeveralKinds, e.at, "keep one of the two", "the line has %q already, and %q too", l.Kind, e.key)
		case slices.Contains(kindKeys, e.key):
			l.Kind = Kind(e.key)
			l.Places[e.key] = r.place(e.value)
			r.kindKey(l, e)
		default:
			l.Places[e.key] = r.place(e.value)
			r.optionalKey(l, e)
		}
	}
}

// needsKind tells a line that gives no kind. One that cannot stand where it does
// has been told.
func (r *reader) needsKind(l *Line, n *yaml.Node) {
	if l.Kind == "" && kindOf(n) == "" {
		r.tell(diag.NoKind, n, "give it is, guess, records, choose or formula", "nothing says what the line comes to")
	}
}

// kindKey reads what a line comes to.
func (r *reader) kindKey(l *Line, e entry) {
	switch l.Kind {
	case Is:
		l.Is, _ = r.number(e.value)
	case Guess:
		r.guess(l, e)
	case Records:
		r.records(l, e.value)
	case Choose:
		l.Choose = r.id(e.value, idFault)
	case Formula:
		if l.Formula = r.text(e.value); l.Formula == "" && e.value.Kind == yaml.ScalarNode {
			r.tell(diag.WrongKind, e.value, "formula: taps * sap_per_tap", "the formula is empty")
		}
	}
}

// guess reads low, likely and high. A likely that is not given is NaN: an even
// shape does without, and what shape it is may stand in another file.
func (r *reader) guess(l *Line, e entry) {
	l.Likely = math.NaN()
	given := map[string]bool{}
	for _, part := range r.entries(e.value, "a guess") {
		given[part.key] = true
		switch part.key {
		case "low":
			l.Low, _ = r.number(part.value)
		case "likely":
			l.Likely, _ = r.number(part.value)
		case "high":
			l.High, _ = r.number(part.value)
		default:
			r.unknown(part, "a guess", []string{"low", "likely", "high"})
			continue
		}
		l.Places["guess."+part.key] = r.place(part.value)
	}
	if e.value.Kind == yaml.MappingNode && (!given["low"] || !given["high"]) {
		r.tell(diag.MissingKey, e.value, "guess: {low: 5, likely: 9, high: 14}", "the guess lacks its low or its high")
	}
}

func (r *reader) records(l *Line, n *yaml.Node) {
	items := r.items(n, `"records"`)
	if len(items) > MaxRecords {
		r.tell(diag.TooMany, n, "keep the latest", "the line has %d records, at most %d may be", len(items), MaxRecords)
		items = nil
	} else if n.Kind == yaml.SequenceNode && len(items) < 2 {
		r.tell(diag.RecordsFew, n, "give two or more, or make it a guess", "%d records are too few to draw from", len(items))
	}
	for _, item := range items {
		if x, ok := r.number(item); ok {
			l.Records = append(l.Records, x)
		}
	}
}

// optionalKey reads a key that does not say what the line comes to.
func (r *reader) optionalKey(l *Line, e entry) {
	switch e.key {
	case "label":
		l.Label = r.text(e.value)
	case "unit":
		l.Unit = r.text(e.value)
	case "note":
		l.Note = r.text(e.value)
	case "source":
		l.Source = r.text(e.value)
	case "caution":
		l.Caution = r.text(e.value)
	case "floor":
		l.Floor = r.optional(e.value)
	case "ceiling":
		l.Ceiling = r.optional(e.value)
	case "shape":
		if l.Shape = r.text(e.value); !slices.Contains(shapes, l.Shape) {
			r.tell(diag.WrongKind, e.value, nearest(l.Shape, shapes), "there is no shape %s", quote(l.Shape))
			l.Shape = ""
		}
	case "among":
		r.among(l, e.value)
	case "moves_with":
		l.MovesWith = r.movesWith(e.value)
	case "headline":
		l.Headline = r.headline(e.value)
	case "lay_in":
		l.LayIn = r.layIn(e.value)
	}
}
