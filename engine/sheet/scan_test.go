package sheet

import (
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

func TestScanFindsEnds(t *testing.T) {
	tests := []struct{ name, text, at, want string }{
		{"plain", "a: one two # c\n", "one", "one two"},
		{"plain over lines", "a: one\n  two\n\n  three\nb: 1\n", "one", "one\n  two\n\n  three"},
		{"plain in braces", "a: {b: x y, c: 1}\n", "x", "x y"},
		{"plain with a colon inside", "a: b:c\n", "b:c", "b:c"},
		{"plain with a hash inside", "a: b#c\n", "b#c", "b#c"},
		{"single quotes", "a: 'it''s' # c\n", "'it", "'it''s'"},
		{"double quotes", `a: "say \"x\" #" # c`, `"say`, `"say \"x\" #"`},
		{"double quotes over lines", "a: \"x\n\n  y\"\n", "\"x", "\"x\n\n  y\""},
		{"brackets", "a: [1, {b: ']'}] # c\n", "[1", "[1, {b: ']'}]"},
		{"brackets over lines", "a: [1, # ]\n  2]\nb: 1\n", "[1", "[1, # ]\n  2]"},
		{"block text", "a: |\n  x\n   y\n\nb: 1\n", "|", "|\n  x\n   y"},
		{"block text, kept blanks", "a: |+\n  x\n\nb: 1\n", "|+", "|+\n  x\n"},
		{"block text, stripped and indented", "a: >-2\n    x\nb: 1\n", ">-2", ">-2\n    x"},
		{"block text under a dash", "- |\n x\n- y\n", "|", "|\n x"},
		{"text that looks like more", "a: don't [[[\nb: 1\n", "don't", "don't [[["},
		{"the key itself", "long key: 1\n", "long", "long key"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			m, f := scan(tt.text)
			require.Nil(t, f)
			from := strings.Index(tt.text, tt.at)
			end, known := m.ends[from]
			require.True(t, known)
			assert.Equal(t, tt.want, tt.text[from:end])
		})
	}
}

func TestScanPositions(t *testing.T) {
	m, f := scan("\uFEFFa: 1\r\nÉé: 2\n\n°Bx: 3")
	require.Nil(t, f)
	for _, tt := range []struct {
		text         string
		line, column int
	}{{"a:", 1, 1}, {"1", 1, 4}, {"Éé", 2, 1}, {"2", 2, 5}, {"°Bx", 4, 1}, {"3", 4, 6}} {
		at := strings.Index(m.text, tt.text)
		line, column := m.position(at)
		assert.Equal(t, tt.line, line, tt.text)
		assert.Equal(t, tt.column, column, tt.text)
		assert.Equal(t, at, m.offset(line, column), tt.text)
	}
}

func TestDepthIsCapped(t *testing.T) {
	nested := func(open, close string, n int) string {
		return "a: " + strings.Repeat(open, n) + strings.Repeat(close, n)
	}
	blocks := func(n int) string {
		var out strings.Builder
		for i := range n {
			out.WriteString(strings.Repeat(" ", i) + "a:\n")
		}
		return out.String() + strings.Repeat(" ", n) + "a: 1\n"
	}
	for name, text := range map[string]string{
		"brackets":            nested("[", "]", 64),
		"braces":              nested("{a: ", "}", 64),
		"lines":               blocks(64),
		"dashes":              strings.Repeat("- ", 65) + "x",
		"question marks":      strings.Repeat("? ", 65) + "x",
		"after block text":    "b: |\n  '\na: " + strings.Repeat("[", 80),
		"after a plain quote": "b: don't\na: " + strings.Repeat("[", 80),
		"after plain lines":   "b: x\n  'y\na: " + strings.Repeat("[", 80),
		"after a comment":     "b: x # '\na: " + strings.Repeat("[", 80),
	} {
		_, f := scan(text)
		require.NotNil(t, f, name)
		assert.Equal(t, diag.YAMLTooDeep, f.code, name)
	}
	for name, text := range map[string]string{
		"brackets":      nested("[", "]", 63),
		"lines":         blocks(63),
		"plain text":    "a: don't " + strings.Repeat("[", 80),
		"quoted text":   "a: '" + strings.Repeat("[", 80) + "'",
		"a comment":     "a: 1 # " + strings.Repeat("[", 80),
		"block text":    "a: |\n  " + strings.Repeat("[", 80),
		"many, in turn": "a: [" + strings.Repeat("[[]],", 80) + "]",
	} {
		_, f := scan(text)
		assert.Nil(t, f, name)
	}
}

// A browser's engine is one thread: what is refused must be refused at once.
func TestMonstersAreRefusedAtOnce(t *testing.T) {
	laughs := "a: &a [x,x,x,x,x,x,x,x,x]\n"
	for c := 'b'; c < 'k'; c++ {
		laughs += string(c) + ": &" + string(c) + " [" + strings.Repeat("*"+string(c-1)+",", 9) + "]\n"
	}
	for name, tt := range map[string]struct {
		text string
		code diag.Code
	}{
		"fifty megabytes": {strings.Repeat("a: 1\n", 10<<20), diag.FileTooLarge},
		"a billion":       {laughs, diag.YAMLAlias},
		"a megabyte of [": {strings.Repeat("[", MaxBytes), diag.YAMLTooDeep},
		"a megabyte of -": {strings.Repeat("- ", MaxBytes/2), diag.YAMLTooDeep},
	} {
		source := []byte(tt.text)
		var d *Doc
		var told diag.List
		// What is refused before it is built asks for next to no memory, however
		// large it is: the sign of early refusal that no busy machine can spoil.
		asked := testing.AllocsPerRun(1, func() { d, told = Parse("x.yaml", source) })
		assert.Nil(t, d, name)
		require.Len(t, told, 1, name)
		assert.Equal(t, tt.code, told[0].Code, name)
		assert.Less(t, asked, 500.0, name)
	}
}

// FuzzScan holds the walk to the library: whatever the library reads, the walk
// reads too, or refuses for a reason of ours; and it knows where each scalar ends.
func FuzzScan(f *testing.F) {
	for _, seed := range []string{base, "a: |+\n  x\n\nb: [1, 'x', {c: d}]\n", "- - a\n  - b: c\n    d\n-\n", "? a\n: b\n", "a: \"\\x41\\\n b\"\n", "{a: b, c, 'd': \"e\"}", "a:\n- b\n- c\nd: >2-\n    e\n"} {
		f.Add(seed)
	}
	ours := []string{"second document", "end of the document", "a line cannot begin", "text cannot begin", "control character", "UTF-8", "64 deep", "names a part", "repeats a named", "gives a type"}
	f.Fuzz(func(t *testing.T, text string) {
		m, fault := scan(text)
		var doc yaml.Node
		if !libraryReads(text, &doc) {
			return
		}
		if fault != nil {
			for _, reason := range ours {
				if strings.Contains(fault.message, reason) {
					return
				}
			}
			t.Fatalf("the library reads what the walk calls %q at %d", fault.message, fault.at)
		}
		depth := 0
		var walk func(n *yaml.Node, at int)
		walk = func(n *yaml.Node, at int) {
			depth = max(depth, at)
			if n.Kind == yaml.ScalarNode && !m.unwritten(n) {
				if _, known := m.ends[m.start(n)]; !known {
					t.Fatalf("no end is known of %q at %d:%d", n.Value, n.Line, n.Column)
				}
			}
			for _, c := range n.Content {
				walk(c, at+1)
			}
		}
		walk(&doc, 0)
		if depth > 4*MaxDepth {
			t.Fatalf("the tree is %d deep", depth)
		}
	})
}

func libraryReads(text string, doc *yaml.Node) (ok bool) {
	defer func() {
		if recover() != nil {
			ok = false
		}
	}()
	documents := yaml.NewDecoder(strings.NewReader(text))
	return documents.Decode(doc) == nil && documents.Decode(&yaml.Node{}) == io.EOF
}
