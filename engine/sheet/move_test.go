package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
)

// requireEdited makes an edit of a sheet of its own and compares the new text.
func requireEdited(t *testing.T, before string, e Edit, after string) {
	t.Helper()
	d, told := Parse("x.yaml", []byte(before))
	require.NotNil(t, d, "%v", told)
	next, refused := d.Edit(e, nil)
	require.Empty(t, refused)
	assert.Equal(t, after, string(next.Source()))
	assert.Empty(t, next.Diagnostics())
}

func TestMove(t *testing.T) {
	const top = "thawbook: 1\nchapters:\n"
	down, up := &Move{By: 1}, &Move{By: -1}
	tests := []struct {
		name, before string
		edit         Edit
		after        string
	}{
		{"down, with the comments above it",
			"  - title: A\n    lines: # all\n      # the first\n      - {id: a, is: 1, unit: 1} # x\n\n      - id: b\n        is: 2\n        unit: 1\n      - {id: c, is: 3, unit: 1}\n", Edit{About: "a", Move: down},
			"  - title: A\n    lines: # all\n\n      - id: b\n        is: 2\n        unit: 1\n      # the first\n      - {id: a, is: 1, unit: 1} # x\n      - {id: c, is: 3, unit: 1}\n"},
		{"up at the end of a file that ends without a break",
			"  - title: A\n    lines:\n      - {id: a, is: 1, unit: 1}\n      - {id: b, is: 2, unit: 1}", Edit{About: "b", Move: up},
			"  - title: A\n    lines:\n      - {id: b, is: 2, unit: 1}\n      - {id: a, is: 1, unit: 1}"},
		{"by several, in brackets",
			"  - {title: A, lines: [{id: a, is: 1, unit: 1}, {id: b, is: 2, unit: 1}, {id: c, is: 3, unit: 1}]}\n", Edit{About: "c", Move: &Move{By: -2}},
			"  - {title: A, lines: [{id: c, is: 3, unit: 1}, {id: a, is: 1, unit: 1}, {id: b, is: 2, unit: 1}]}\n"},
		{"a row",
			"  - title: A\n    tables:\n      - id: t\n        columns: [{id: x, unit: 1}]\n        rows:\n          - {id: wood, x: 1}\n          - {id: gas, x: 2}\n", Edit{About: "t.gas", Move: up},
			"  - title: A\n    tables:\n      - id: t\n        columns: [{id: x, unit: 1}]\n        rows:\n          - {id: gas, x: 2}\n          - {id: wood, x: 1}\n"},
		{"to a chapter that has lines, set in otherwise",
			"  - title: A\n    lines:\n      # about a\n      - id: a\n        is: 1\n        unit: 1\n      - {id: b, is: 2, unit: 1}\n  - title: B\n    lines:\n    - {id: c, is: 3, unit: 1}\n", Edit{About: "a", Move: &Move{Chapter: "B"}},
			"  - title: A\n    lines:\n      - {id: b, is: 2, unit: 1}\n  - title: B\n    lines:\n    - {id: c, is: 3, unit: 1}\n    # about a\n    - id: a\n      is: 1\n      unit: 1\n"},
		{"to a chapter that has none",
			"  - title: A\n    lines:\n      - {id: a, is: 1, unit: 1}\n  - title: B\n    note: x\n", Edit{About: "a", Move: &Move{Chapter: "B"}},
			"  - title: A\n    lines: []\n  - title: B\n    note: x\n    lines:\n      - {id: a, is: 1, unit: 1}\n"},
		{"from brackets to brackets",
			"  - {title: A, lines: [{id: a, is: 1, unit: 1}, {id: b, is: 2, unit: 1}]}\n  - {title: B, lines: []}\n", Edit{About: "a", Move: &Move{Chapter: "B"}},
			"  - {title: A, lines: [{id: b, is: 2, unit: 1}]}\n  - {title: B, lines: [{id: a, is: 1, unit: 1}]}\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) { requireEdited(t, top+tt.before, tt.edit, top+tt.after) })
	}
}

func TestDuplicate(t *testing.T) {
	const top = "thawbook: 1\nchapters:\n"
	tests := []struct {
		name, before string
		edit         Edit
		after        string
	}{
		{"a line, saying otherwise",
			"  - title: A\n    lines:\n      - {id: a, label: One, is: 1, unit: 1, note: x} # y\n      - {id: b, is: 2, unit: 1}\n", Edit{About: "a", Duplicate: "a_2", Set: Set{Label: text("Two"), Is: number(4)}},
			"  - title: A\n    lines:\n      - {id: a, label: One, is: 1, unit: 1, note: x} # y\n      - {id: a_2, label: Two, is: 4, unit: 1, note: x}\n      - {id: b, is: 2, unit: 1}\n"},
		{"a line over lines",
			"  - title: A\n    lines:\n      - id: a\n        guess: {low: 1, likely: 2, high: 3}\n        unit: 1\n", Edit{About: "a", Duplicate: "c"},
			"  - title: A\n    lines:\n      - id: a\n        guess: {low: 1, likely: 2, high: 3}\n        unit: 1\n      - id: c\n        guess: {low: 1, likely: 2, high: 3}\n        unit: 1\n"},
		{"a row in brackets",
			"  - title: A\n    tables:\n      - {id: t, columns: [{id: x, unit: 1}], rows: [{id: wood, label: Wood, x: 1}]}\n", Edit{About: "t.wood", Duplicate: "oak", Set: Set{Label: text("Oak")}},
			"  - title: A\n    tables:\n      - {id: t, columns: [{id: x, unit: 1}], rows: [{id: wood, label: Wood, x: 1}, {id: oak, label: Oak, x: 1}]}\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) { requireEdited(t, top+tt.before, tt.edit, top+tt.after) })
	}
}

func TestDuplicateOfAnInheritedLineIsAdded(t *testing.T) {
	load := files(map[string]string{"base.yaml": base})
	d, _ := Parse("dry.yaml", []byte("thawbook: 1\nfrom: base.yaml\n"))
	in, _ := Resolve(d, load)
	next, refused := d.Edit(Edit{About: "taps", Duplicate: "taps_2", Set: Set{Label: text("More taps")}}, in)
	require.Empty(t, refused)
	s, told := Resolve(next, load)
	require.Empty(t, told)
	was, is := s.Find("taps"), s.Find("taps_2")
	assert.Equal(t, []any{was.Kind, was.Is, was.Unit, "More taps"}, []any{is.Kind, is.Is, is.Unit, is.Label})
	assert.Equal(t, s.chapterOf(was), s.chapterOf(is))
}

func TestMoveAndItsKinAreRefused(t *testing.T) {
	const own = "thawbook: 1\nchapters:\n  - title: A\n    lines:\n      - {id: a, is: 1, unit: 1}\n      - {id: b, formula: a + let c = 2; c, unit: 1}\n  - title: B\n    lines: [{id: z, is: 1, unit: 1}]\n" +
		"    tables:\n      - {id: t, columns: [{id: x, unit: 1}, {id: y, unit: 1, formula: x * a}], rows: [{id: r, x: 1}]}\n"
	for name, tt := range map[string]struct {
		edit Edit
		code diag.Code
	}{
		"up from the top":          {Edit{About: "a", Move: &Move{By: -1}}, diag.EditUnknown},
		"nowhere":                  {Edit{About: "a", Move: &Move{}}, diag.EditUnknown},
		"to its own chapter":       {Edit{About: "a", Move: &Move{Chapter: "A"}}, diag.EditUnknown},
		"to no chapter":            {Edit{About: "a", Move: &Move{Chapter: "C"}}, diag.EditUnknown},
		"down and away":            {Edit{About: "a", Move: &Move{By: 1, Chapter: "B"}}, diag.EditUnknown},
		"a row to a chapter":       {Edit{About: "t.r", Move: &Move{Chapter: "A"}}, diag.EditUnknown},
		"what is not there":        {Edit{About: "q", Move: &Move{By: 1}}, diag.EditUnknown},
		"moved and set":            {Edit{About: "a", Move: &Move{By: 1}, Set: Set{Is: number(2)}}, diag.EditUnknown},
		"moved and gone":           {Edit{About: "a", Move: &Move{By: 1}, Remove: true}, diag.EditUnknown},
		"a copy of a taken id":     {Edit{About: "a", Duplicate: "b"}, diag.DuplicateID},
		"a copy of no id":          {Edit{About: "a", Duplicate: "B!"}, diag.BadID},
		"a copy with a dot":        {Edit{About: "a", Duplicate: "t.q"}, diag.BadID},
		"a copy of a column":       {Edit{About: "t.x", Duplicate: "v"}, diag.EditUnknown},
		"a name that is taken":     {Edit{About: "a", Rename: "z"}, diag.DuplicateID},
		"a name of a column there": {Edit{About: "a", Rename: "x"}, diag.DuplicateID},
		"a name of a let there":    {Edit{About: "a", Rename: "c"}, diag.DuplicateID},
		"a name of a function":     {Edit{About: "a", Rename: "sum"}, diag.BadID},
		"a name with a dot":        {Edit{About: "a", Rename: "t.q"}, diag.BadID},
		"another name for a row":   {Edit{About: "t.r", Rename: "q"}, diag.EditUnknown},
		"renamed and set":          {Edit{About: "a", Rename: "q", Set: Set{Is: number(1)}}, diag.EditUnknown},
	} {
		d, told := Parse("x.yaml", []byte(own))
		require.Empty(t, told)
		next, refused := d.Edit(tt.edit, nil)
		require.Len(t, refused, 1, name)
		assert.Equal(t, tt.code, refused[0].Code, "%s: %v", name, refused[0])
		assert.NotEmpty(t, refused[0].Hint, name)
		assert.Same(t, d, next, name)
	}
}
