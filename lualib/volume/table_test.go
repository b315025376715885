package volume

import (
	"testing"

	"weirbook/lualib/published"
)

// row is one row of a table of published values.
type row = published.Row

// table reads a table of published values.
func table(t *testing.T, name string) []row {
	t.Helper()
	return published.Table(t, "engineering", name)
}
