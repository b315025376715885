package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"weirbook/lualib"
	"weirbook/notebook/diag"
)

func newLibCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "lib [NAME]",
		Short: "Print the library reference: all functions, or one",
		Long:  `Lib lists the functions that cells can call, or explains one of them: its arguments, units, results, range, accuracy, source and an example.`,
		Example: `  weirbook lib
  weirbook lib power
  weirbook lib salinity.salt`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) > 1 {
				return &codedError{exitUsage, fmt.Sprintf("lib: got %d names, want one", len(args)), "write weirbook lib tank"}
			}
			return nil
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			var names []string
			for _, f := range lualib.New().Functions() {
				names = append(names, f.FullName())
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(c *cobra.Command, args []string) error {
			engine := lualib.New()
			if len(args) == 0 {
				listFunctions(c.OutOrStdout(), engine.Functions())
				return nil
			}
			if args[0] == "species" {
				for _, line := range lualib.SpeciesList() {
					fmt.Fprintln(c.OutOrStdout(), line)
				}
				return nil
			}
			return explain(c.OutOrStdout(), engine, args[0])
		},
	}
}

// listFunctions prints a line a function.
func listFunctions(w io.Writer, functions []*lualib.Function) {
	for _, f := range functions {
		fmt.Fprintf(w, "%-26s %s\n", f.FullName(), f.Brief)
	}
	fmt.Fprintln(w, "\nweirbook lib NAME explains one, weirbook lib species lists the fish; every recording function also takes note = \"…\"")
}

// about finds the functions whose reference speaks of a word.
func about(engine *lualib.Engine, word string) []*lualib.Function {
	var found []*lualib.Function
	for _, f := range engine.Functions() {
		for _, w := range strings.FieldsFunc(strings.ToLower(f.Brief), func(r rune) bool { return r < 'a' || r > 'z' }) {
			if w == strings.ToLower(word) || w == strings.ToLower(word)+"s" {
				found = append(found, f)
				break
			}
		}
	}
	return found
}

// explain prints one function, or the functions of a module.
func explain(w io.Writer, engine *lualib.Engine, name string) error {
	if f := engine.Find(name); f != nil {
		fmt.Fprint(w, f.Reference())
		return nil
	}
	var inModule []*lualib.Function
	var names []string
	for _, f := range engine.Functions() {
		names = append(names, f.FullName(), f.Name)
		if f.Module == name {
			inModule = append(inModule, f)
		}
	}
	if inModule != nil {
		listFunctions(w, inModule)
		return nil
	}
	if found := about(engine, name); found != nil {
		listFunctions(w, found)
		return nil
	}
	near := diag.Nearest(name, names)
	for _, f := range engine.Functions() {
		if f.Name == name || f.Name == near {
			near = f.FullName()
		}
	}
	hint := "weirbook lib lists all functions"
	if near != "" {
		hint = fmt.Sprintf("did you mean %s?", near)
	}
	return &codedError{exitUsage, fmt.Sprintf("lib: no function or module is named %q", strings.TrimSpace(name)), hint}
}
