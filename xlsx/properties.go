package xlsx

import (
	"encoding/xml"
	"strings"

	"github.com/xuri/excelize/v2"
)

// properties sets the document's properties. They hold no time: the library's
// own template has one, so the part is written anew.
func (b *book) properties() error {
	var title strings.Builder
	if err := xml.EscapeText(&title, []byte(b.title)); err != nil {
		return err
	}
	core := xml.Header + `<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties"` +
		` xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title>` + title.String() + `</dc:title><dc:creator>Weirbook</dc:creator></cp:coreProperties>`
	b.file.Pkg.Store("docProps/core.xml", []byte(core))
	return b.file.SetAppProps(&excelize.AppProperties{Application: "Weirbook"})
}

// nameInputs gives the input cells their names. No name reads as the address
// of a cell.
func (b *book) nameInputs() error {
	for _, n := range b.inputs.names {
		if err := b.file.SetDefinedName(&excelize.DefinedName{Name: n.name, RefersTo: n.cell.from("")}); err != nil {
			return err
		}
	}
	return nil
}
