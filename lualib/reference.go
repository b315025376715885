package lualib

import (
	"fmt"
	"strings"
)

// Reference gives the reference text of a function, from the same table that the
// argument decoder works from.
func (f *Function) Reference() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n    %s\n", f.FullName(), f.Brief)
	if len(f.Args) > 0 {
		b.WriteString("\narguments\n")
		for i := range f.Args {
			f.Args[i].reference(&b)
		}
		if len(f.Makes) > 0 {
			b.WriteString("    note           a remark that goes with the record\n")
		}
	}
	if f.Result != "" {
		fmt.Fprintf(&b, "\nresult\n    %s\n", f.Result)
	}
	if len(f.Fields) > 0 {
		b.WriteString("\nresult, fields\n")
		for _, field := range f.Fields {
			unit := ""
			if field.Unit != "" {
				unit = " (" + field.Unit + ")"
			}
			fmt.Fprintf(&b, "    %-14s %s%s\n", field.Name, field.Doc, unit)
		}
	}
	b.WriteByte('\n')
	for _, line := range [][2]string{
		{"makes", kindList(f.Makes)}, {"reads", kindList(f.Reads)}, {"checked after", f.Checks}, {"range", f.Range},
		{"accuracy", f.Accuracy}, {"source", f.Source}, {"caution", f.Caution}, {"example", f.Example},
	} {
		if line[1] != "" {
			fmt.Fprintf(&b, "%-14s %s\n", line[0], line[1])
		}
	}
	return b.String()
}

func (a *Arg) reference(b *strings.Builder) {
	text := a.Doc
	if a.Kind == ArgQuantity || a.Kind == ArgMoney || a.Kind == ArgList {
		text += "; " + a.wantOf()
		if a.Unit != "" && a.Kind != ArgMoney {
			text += fmt.Sprintf(", as in %q", a.exampleOf(""))
		}
	}
	switch {
	case a.Need:
		text += "; needed"
	case a.Default != "":
		text += "; default: " + a.Default
	}
	fmt.Fprintf(b, "    %-14s %s\n", a.Name, text)
}

func kindList[K ~string](kinds []K) string {
	var names []string
	for _, k := range kinds {
		names = append(names, string(k)+" records")
	}
	return strings.Join(names, ", ")
}
