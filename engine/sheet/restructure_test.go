package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
)

func TestRestructure(t *testing.T) {
	const top = "thawbook: 1\nchapters:\n"
	one := Edit{About: "new", Add: &Add{Chapter: "A"}, Set: Set{Is: number(3), Unit: text("gal"), Label: text("New, one")}}
	behind := one
	behind.Add = &Add{Chapter: "A", After: "a"}
	elsewhere := one
	elsewhere.Add = &Add{Chapter: "B: more"}
	row := Edit{About: "t.gas", Add: &Add{}, Set: Set{Label: text("Gas")}}
	tests := []struct {
		name, before string
		edit         Edit
		after        string
	}{
		{"a line at the end of a list",
			"  - title: A\n    lines:\n      - {id: a, is: 1, unit: 1}\n      - id: b\n        is: 2\n        unit: 1 # x\n\n  - title: B\n", one,
			"  - title: A\n    lines:\n      - {id: a, is: 1, unit: 1}\n      - id: b\n        is: 2\n        unit: 1 # x\n      - {id: new, label: \"New, one\", is: 3, unit: gal}\n\n  - title: B\n"},
		{"a line behind another",
			"  - title: A\n    lines:\n    - {id: a, is: 1, unit: 1} # x\n    - {id: b, is: 1, unit: 1}\n", behind,
			"  - title: A\n    lines:\n    - {id: a, is: 1, unit: 1} # x\n    - {id: new, label: \"New, one\", is: 3, unit: gal}\n    - {id: b, is: 1, unit: 1}\n"},
		{"a line in brackets",
			"  - {title: A, lines: [{id: a, is: 1, unit: 1}]}\n", one,
			"  - {title: A, lines: [{id: a, is: 1, unit: 1}, {id: new, label: \"New, one\", is: 3, unit: gal}]}\n"},
		{"a chapter's first line",
			"  - title: A\n    note: x\n    tables: []\n", one,
			"  - title: A\n    note: x\n    lines:\n      - {id: new, label: \"New, one\", is: 3, unit: gal}\n    tables: []\n"},
		{"a chapter with nothing behind its lines",
			"  - title: A\n    lines:\n  - title: B\n", one,
			"  - title: A\n    lines: [{id: new, label: \"New, one\", is: 3, unit: gal}]\n  - title: B\n"},
		{"a chapter of its own",
			"  - title: A\n    lines:\n      - {id: a, is: 1, unit: 1}\n", elsewhere,
			"  - title: A\n    lines:\n      - {id: a, is: 1, unit: 1}\n  - title: \"B: more\"\n    lines:\n      - {id: new, label: \"New, one\", is: 3, unit: gal}\n"},
		{"a chapter in braces without lines",
			"  - {title: A}\n", one,
			"  - {title: A, lines: [{id: new, label: \"New, one\", is: 3, unit: gal}]}\n"},
		{"the first chapter", "", elsewhere,
			"  - title: \"B: more\"\n    lines:\n      - {id: new, label: \"New, one\", is: 3, unit: gal}\n"},
		{"a row",
			"  - title: A\n    tables:\n      - id: t\n        columns: [{id: x, unit: 1}, {id: y, formula: x, unit: 1}, {id: z, unit: 1}]\n        rows:\n          - {id: wood, x: 1, z: 2}\n", row,
			"  - title: A\n    tables:\n      - id: t\n        columns: [{id: x, unit: 1}, {id: y, formula: x, unit: 1}, {id: z, unit: 1}]\n        rows:\n          - {id: wood, x: 1, z: 2}\n          - {id: gas, label: Gas, x: 0, z: 0}\n"},
		{"a line goes",
			"  - title: A\n    lines:\n      - {id: a, is: 1, unit: 1} # x\n      # about b\n      - id: b\n        is: 2\n        unit: 1 # y\n\n      - {id: c, is: 1, unit: 1}\n", Edit{About: "b", Remove: true},
			"  - title: A\n    lines:\n      - {id: a, is: 1, unit: 1} # x\n\n      - {id: c, is: 1, unit: 1}\n"},
		{"the first line goes",
			"  - title: A\n    lines:\n      - {id: a, is: 1, unit: 1} # x\n      - {id: b, is: 1, unit: 1}\n", Edit{About: "a", Remove: true},
			"  - title: A\n    lines:\n      - {id: b, is: 1, unit: 1}\n"},
		{"the only line goes",
			"  - title: A\n    lines: # all\n      - {id: a, is: 1, unit: 1}\n    tables: []\n", Edit{About: "a", Remove: true},
			"  - title: A\n    lines: [] # all\n    tables: []\n"},
		{"a line in brackets goes",
			"  - {title: A, lines: [{id: a, is: 1, unit: 1}, {id: b, is: 1, unit: 1}]}\n", Edit{About: "b", Remove: true},
			"  - {title: A, lines: [{id: a, is: 1, unit: 1}]}\n"},
		{"the first in brackets goes",
			"  - {title: A, lines: [{id: a, is: 1, unit: 1}, {id: b, is: 1, unit: 1}]}\n", Edit{About: "a", Remove: true},
			"  - {title: A, lines: [{id: b, is: 1, unit: 1}]}\n"},
		{"a row goes",
			"  - title: A\n    tables:\n      - id: t\n        columns: [{id: x, unit: 1}]\n        rows: [{id: wood, x: 1}, {id: gas, x: 2}]\n", Edit{About: "t.gas", Remove: true},
			"  - title: A\n    tables:\n      - id: t\n        columns: [{id: x, unit: 1}]\n        rows: [{id: wood, x: 1}]\n"},
		{"a table goes",
			"  - title: A\n    tables:\n      - {id: t, columns: [], rows: []}\n      - {id: u, columns: [], rows: []}\n", Edit{About: "t", Remove: true},
			"  - title: A\n    tables:\n      - {id: u, columns: [], rows: []}\n"},
		{"a column without values goes",
			"  - title: A\n    tables:\n      - id: t\n        columns: [{id: x, unit: 1}, {id: y, unit: 1, formula: x}]\n        rows: [{id: wood, x: 1}]\n", Edit{About: "t.y", Remove: true},
			"  - title: A\n    tables:\n      - id: t\n        columns: [{id: x, unit: 1}]\n        rows: [{id: wood, x: 1}]\n"},
		{"a cell goes back to its column",
			"  - title: A\n    tables:\n      - id: t\n        columns: [{id: x, unit: 1, formula: 1 + 1}]\n        rows: [{id: wood, x: 1}]\n", Edit{About: "t.wood.x", Restore: true},
			"  - title: A\n    tables:\n      - id: t\n        columns: [{id: x, unit: 1, formula: 1 + 1}]\n        rows: [{id: wood}]\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d, told := Parse("x.yaml", []byte(top+tt.before))
			require.NotNil(t, d, "%v", told)
			next, refused := d.Edit(tt.edit, nil)
			require.Empty(t, refused)
			assert.Equal(t, top+tt.after, string(next.Source()))
			assert.Empty(t, next.Diagnostics())
		})
	}
}

func TestRestructureAScenario(t *testing.T) {
	const top = "thawbook: 1\nfrom: base.yaml\n"
	one := Edit{About: "new", Add: &Add{Chapter: "Sap"}, Set: Set{Formula: text("taps * 2"), Unit: text("tap")}}
	tests := []struct {
		name, before string
		edit         Edit
		after        string
	}{
		{"the first line it adds", "change:\n  taps: 3\n", one, "change:\n  taps: 3\n\nadd:\n  - title: Sap\n    lines:\n      - {id: new, formula: taps * 2, unit: tap}\n"},
		{"the first it drops", "", Edit{About: "taps", Remove: true}, "\ndrop:\n  - taps\n"},
		{"one more it drops", "drop: [fuel]\n", Edit{About: "taps", Remove: true}, "drop: [fuel, taps]\n"},
		{"one more it drops, on a line of its own", "drop:\n  - fuel # x\n", Edit{About: "fuels.gas", Remove: true}, "drop:\n  - fuel # x\n  - fuels.gas\n"},
		{"a change is taken back", "change:\n  taps: 3 # x\n  fuel: gas\n", Edit{About: "taps", Restore: true}, "change:\n  fuel: gas\n"},
		{"the last change is taken back", "change:\n  taps:\n    is: 3\n", Edit{About: "taps", Restore: true}, "change: {}\n"},
		{"a first drop where nothing stands yet", "drop: # none\n", Edit{About: "taps", Remove: true}, "drop: # none\n  - taps\n"},
		{"what it added goes", "add:\n  - title: Sap\n    lines: [{id: x, is: 1, unit: 1}]\n", Edit{About: "x", Remove: true}, "add:\n  - title: Sap\n    lines: []\n"},
	}
	load := files(map[string]string{"base.yaml": base})
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d, told := Parse("dry.yaml", []byte(top+tt.before))
			require.Empty(t, told)
			in, _ := Resolve(d, load)
			next, refused := d.Edit(tt.edit, in)
			require.Empty(t, refused)
			assert.Equal(t, top+tt.after, string(next.Source()))
			s, told := Resolve(next, load)
			require.Empty(t, told)
			if tt.edit.Remove {
				assert.Nil(t, s.Find(tt.edit.About))
			}
			if tt.edit.Add != nil {
				assert.Equal(t, "taps * 2", s.Find("new").Formula)
			}
		})
	}
}

func TestRestructureIsRefused(t *testing.T) {
	load := files(map[string]string{"base.yaml": base})
	for name, tt := range map[string]struct {
		edit Edit
		code diag.Code
	}{
		"an id that is taken":         {Edit{About: "taps", Add: &Add{Chapter: "Sap"}, Set: Set{Is: number(1)}}, diag.DuplicateID},
		"an id that is a table's":     {Edit{About: "fuels", Add: &Add{Chapter: "Sap"}, Set: Set{Is: number(1)}}, diag.DuplicateID},
		"an id that could not be one": {Edit{About: "New", Add: &Add{Chapter: "Sap"}, Set: Set{Is: number(1)}}, diag.BadID},
		"a function's name":           {Edit{About: "sum", Add: &Add{Chapter: "Sap"}, Set: Set{Is: number(1)}}, diag.BadID},
		"a line of no kind":           {Edit{About: "new", Add: &Add{Chapter: "Sap"}}, diag.NoKind},
		"no chapter":                  {Edit{About: "new", Add: &Add{}, Set: Set{Is: number(1)}}, diag.MissingKey},
		"a title of a line":           {Edit{About: "new", Add: &Add{Chapter: "Sap"}, Set: Set{Is: number(1), Title: text("x")}}, diag.EditUnknown},
		"a row that is taken":         {Edit{About: "fuels.gas", Add: &Add{}}, diag.DuplicateID},
		"a row of no table":           {Edit{About: "fules.oil", Add: &Add{}}, diag.EditUnknown},
		"a number for a row":          {Edit{About: "fuels.oil", Add: &Add{}, Set: Set{Is: number(1)}}, diag.EditUnknown},
		"two things":                  {Edit{About: "taps", Remove: true, Restore: true}, diag.EditUnknown},
		"gone and set":                {Edit{About: "taps", Remove: true, Set: Set{Is: number(1)}}, diag.EditUnknown},
		"nothing there":               {Edit{About: "tabs", Remove: true}, diag.EditUnknown},
		"a cell":                      {Edit{About: "fuels.gas.heat", Remove: true}, diag.EditUnknown},
		"a column with values":        {Edit{About: "fuels.heat", Remove: true}, diag.EditUnknown},
		"no change":                   {Edit{About: "taps", Restore: true}, diag.EditUnknown},
		"a value a row must have":     {Edit{About: "fuels.gas.heat", Restore: true}, diag.EditUnknown},
	} {
		for _, source := range []string{base, "thawbook: 1\nfrom: base.yaml\n"} {
			d, told := Parse("x.yaml", []byte(source))
			require.Empty(t, told)
			in, _ := Resolve(d, load)
			next, refused := d.Edit(tt.edit, in)
			require.Len(t, refused, 1, name)
			if d.From() == "" {
				assert.Equal(t, tt.code, refused[0].Code, "%s: %v", name, refused[0])
			}
			assert.NotEmpty(t, refused[0].Hint, name)
			assert.Same(t, d, next, name)
		}
	}
}
