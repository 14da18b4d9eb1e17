//go:build !js

package back

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/workbook"
)

// rewritten is a workbook as another library writes what it read of it. Where
// Node or the page's packages are missing the test is skipped, unless it was
// asked for by name, as web/workbook/rewritten.test.ts does.
func rewritten(t *testing.T, file []byte) []byte {
	library, err := filepath.Abs("../../../web/node_modules/@e965/xlsx/xlsx.mjs")
	require.NoError(t, err)
	_, missing := os.Stat(library)
	node, err := exec.LookPath("node")
	if missing != nil || err != nil {
		if os.Getenv("THAWBOOK_REWRITE") != "" {
			t.Fatal("Node and the page's packages are not there")
		}
		t.Skip("Node or the page's packages are not installed")
	}
	dir := t.TempDir()
	from, to := filepath.Join(dir, "in.xlsx"), filepath.Join(dir, "out.xlsx")
	require.NoError(t, os.WriteFile(from, file, 0o600))
	said, err := exec.Command(node, "testdata/rewrite.mjs", library, from, to).CombinedOutput()
	require.NoError(t, err, string(said))
	out, err := os.ReadFile(to)
	require.NoError(t, err)
	return out
}

func TestRewrittenByAnotherLibrary(t *testing.T) {
	for k, file := range sheets(t) {
		p, plan := bound(t, file)
		sent := out(t, p)
		r := reported(t, rewritten(t, sent), plan)
		assert.Empty(t, r.Changes, file)
		assert.Empty(t, r.Lost, file)
		assert.Empty(t, r.Told, file)
		came, ids := edited(t, sent, uint64(40+k), 6, nil)
		assert.Equal(t, ids, changed(reported(t, rewritten(t, came), plan)), file)
	}
	d := newDesk(t)
	d.work("sap", "taps*each*0.9")
	d.write("fuel", workbook.Value, "gas")
	r := reported(t, rewritten(t, d.file()), d.plan)
	require.Equal(t, []string{"fuel", "sap"}, changed(r))
	for _, c := range r.Changes {
		set := c.Edits[0].Set
		assert.True(t, set.Choose != nil && *set.Choose == "gas" || set.Formula != nil && *set.Formula == "(taps * each) * 0.9", c)
	}
}
