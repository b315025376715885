package main

import (
	"context"
	"regexp"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"weirbook/notebook/diag"
)

type contextType = context.Context

func background() context.Context { return context.Background() }

var unknownFlag = regexp.MustCompile(`unknown (?:flag: --(\S+)|shorthand flag: '(.)')`)

// usageText adds the nearest flag to an error of the command line.
func usageText(root *cobra.Command, err error) string {
	text := err.Error()
	m := unknownFlag.FindStringSubmatch(text)
	if m == nil || m[1] == "" {
		return text
	}
	var names []string
	collect := func(f *pflag.Flag) { names = append(names, f.Name) }
	root.PersistentFlags().VisitAll(collect)
	for _, c := range root.Commands() {
		c.Flags().VisitAll(collect)
	}
	name, _, _ := strings.Cut(m[1], "=")
	if near := diag.Nearest(name, names); near != "" {
		text += "\n  hint: did you mean --" + near + "?"
	}
	return text
}

// hintOf gives the advice that an error carries.
func hintOf(err error) string { return diag.AsFault(err).Hint }
