package xlsx

import (
	"archive/zip"
	"bytes"
	"io"
	"io/fs"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// sortedZip gathers the parts of the file and writes them by name when it is
// closed: the library hands them over in the order of a map. The entries have
// no time.
type sortedZip struct {
	to    io.Writer
	parts []*zipPart
}

type zipPart struct {
	name    string
	content bytes.Buffer
}

func newSortedZip(w io.Writer) excelize.ZipWriter { return &sortedZip{to: w} }

// Create begins a part; it is written to until the next one begins.
func (z *sortedZip) Create(name string) (io.Writer, error) {
	part := &zipPart{name: name}
	z.parts = append(z.parts, part)
	return &part.content, nil
}

// AddFS is never called for a workbook made from nothing.
func (z *sortedZip) AddFS(fs.FS) error { return fs.ErrInvalid }

// Close writes the archive.
func (z *sortedZip) Close() error {
	slices.SortFunc(z.parts, func(a, b *zipPart) int { return strings.Compare(a.name, b.name) })
	w := zip.NewWriter(z.to)
	for _, part := range z.parts {
		entry, err := w.Create(part.name)
		if err != nil {
			return err
		}
		if _, err := part.content.WriteTo(entry); err != nil {
			return err
		}
	}
	return w.Close()
}
