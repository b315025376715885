package xlsx_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"io"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook"
	"weirbook/xlsx"
)

func TestSameResultSameBytes(t *testing.T) {
	first := write(t, incomplete())
	for range 20 {
		require.True(t, bytes.Equal(first, write(t, incomplete())))
	}
}

// The parts stand by name, without a time, and no part tells when it was made.
func TestNoClockInTheFile(t *testing.T) {
	file := write(t, sample())
	z, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	require.NoError(t, err)
	var names []string
	for _, part := range z.File {
		names = append(names, part.Name)
		require.True(t, part.Modified.IsZero() || part.Modified.Year() < 1981, part.Name)
	}
	require.True(t, slices.IsSorted(names))
	require.Equal(t, "[Content_Types].xml", names[0])
	r, err := z.Open("docProps/core.xml")
	require.NoError(t, err)
	core, err := io.ReadAll(r)
	require.NoError(t, err)
	require.NotContains(t, string(core), "dcterms")
	require.Contains(t, string(core), "<dc:title>Two tanks in the attic</dc:title>")
}

type brokenWriter struct{}

func (brokenWriter) Write([]byte) (int, error) { return 0, errBroken }

var errBroken = errors.New("the disk is full")

func TestWriteErrors(t *testing.T) {
	require.ErrorIs(t, xlsx.Write(brokenWriter{}, sample()), errBroken)
}

// A run that ended before it had a plan still gives a workbook that says so.
func TestEmptyResult(t *testing.T) {
	f := read(t, &notebook.Result{})
	require.Equal(t, "Notebook", f.text("Start here", "A1"))
	require.Equal(t, "The notebook has no budget lines.", f.text("Budget", "A3"))
	require.Equal(t, 0.0, f.number("Start here", "B5"))
}
