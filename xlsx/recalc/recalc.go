// Package recalc is for tests only: it takes the values of formulas out of a
// workbook, has LibreOffice work them out anew, and compares. A value that was
// left in would be trusted by LibreOffice and stay wrong.
package recalc

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"regexp"
	"strings"
)

// formulaCell matches a cell with a formula and its value.
var formulaCell = regexp.MustCompile(`(<c [^>]*?)( t="[a-zA-Z]+")?(>)(<f[^>]*>[^<]*</f>|<f[^>]*/>)<v>[^<]*</v>`)

// Strip gives the workbook without the values of its formulas.
func Strip(xlsx []byte) ([]byte, error) {
	from, err := zip.NewReader(bytes.NewReader(xlsx), int64(len(xlsx)))
	if err != nil {
		return nil, fmt.Errorf("recalc: %w", err)
	}
	var out bytes.Buffer
	to := zip.NewWriter(&out)
	for _, part := range from.File {
		if err := stripPart(to, part); err != nil {
			return nil, fmt.Errorf("recalc: %s: %w", part.Name, err)
		}
	}
	if err := to.Close(); err != nil {
		return nil, fmt.Errorf("recalc: %w", err)
	}
	return out.Bytes(), nil
}

func stripPart(to *zip.Writer, part *zip.File) error {
	r, err := part.Open()
	if err != nil {
		return err
	}
	defer r.Close()
	content, err := io.ReadAll(r)
	if err != nil {
		return err
	}
	if strings.HasPrefix(part.Name, "xl/worksheets/") {
		content = formulaCell.ReplaceAll(content, []byte("$1$3$4"))
	}
	w, err := to.Create(part.Name)
	if err != nil {
		return err
	}
	_, err = w.Write(content)
	return err
}
