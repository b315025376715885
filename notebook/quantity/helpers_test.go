package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

func mustParse(t testing.TB, text string) quantity.Quantity {
	t.Helper()
	q, err := quantity.Parse(text)
	require.NoError(t, err, text)
	return q
}
