package main

import (
	"regexp"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"weirbook/notebook/diag"
)

var (
	unknownCommand = regexp.MustCompile(`^unknown command "(.*)" for "(.*)"`)
	unknownFlag    = regexp.MustCompile(`unknown (?:flag: --(\S+)|shorthand flag: '(.)')`)
)

// usageText adds the nearest command or flag to an error of the command line.
func usageText(root *cobra.Command, err error) string {
	text := err.Error()
	if m := unknownCommand.FindStringSubmatch(text); m != nil {
		return text + "\n  hint: " + nearestCommand(root, m[1], m[2])
	}
	m := unknownFlag.FindStringSubmatch(text)
	switch {
	case m == nil:
		return text
	case m[1] == "":
		if strings.ContainsAny(m[2], "0123456789.") {
			text += "\n  hint: put -- before an expression that begins with a minus sign"
		}
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

// nearestCommand suggests a command among those of the path to it.
func nearestCommand(root *cobra.Command, name, path string) string {
	parent, _, err := root.Find(strings.Fields(path)[1:])
	if err != nil {
		parent = root
	}
	var names []string
	for _, c := range parent.Commands() {
		names = append(names, c.Name())
	}
	if near := diag.Nearest(name, names); near != "" {
		return "did you mean " + near + "?"
	}
	return path + " -h lists the commands"
}

// hintOf gives the advice that an error carries.
func hintOf(err error) string { return diag.AsFault(err).Hint }
