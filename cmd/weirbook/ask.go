package main

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"weirbook/notebook"
	"weirbook/notebook/quantity"
)

func newAskCommand() *cobra.Command {
	var o runOptions
	var in, unit string
	var digits int
	c := &cobra.Command{
		Use:   "ask 'EXPR'",
		Short: "Print the value of one expression",
		Long: `Ask works out one expression against the library, or against the values of a
notebook with --in, and prints the value with its unit.`,
		Example: `  weirbook ask 'Q"72 in" * Q"18 in"' --unit m2
  weirbook ask 'salinity.density{salinity = "15 ppt", temperature = "25 degC"}' --digits 9
  weirbook ask 'cost.to_spend()' --in room.md`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) != 1 {
				return &codedError{exitUsage, fmt.Sprintf("ask: got %d arguments, want one expression", len(args)), "put the expression between single quotes"}
			}
			if strings.TrimSpace(args[0]) == "" {
				return &codedError{exitUsage, "ask: got an empty expression, want one", `write weirbook ask 'Q"72 in":to "cm"'`}
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			if c.Flags().Changed("digits") && (digits < 1 || digits > 17) {
				return &codedError{exitUsage, fmt.Sprintf("--digits: got %d, want 1 to 17", digits), ""}
			}
			ctx, stop := interrupted(c)
			defer stop()
			return ask(ctx, c, args[0], in, unit, digits, &o)
		},
	}
	o.options.register(c)
	c.Flags().StringVar(&in, "in", "", "work it out against the values of this notebook")
	c.Flags().StringVar(&unit, "unit", "", "show the value in this unit")
	c.Flags().IntVar(&digits, "digits", 0, "significant digits to print (default: rounded for reading)")
	return c
}

// ask adds the expression to the notebook as a value in its text, runs it, and
// prints that value.
func ask(ctx context.Context, c *cobra.Command, expression, in, unit string, digits int, o *runOptions) error {
	var content []byte
	name := "ask.md"
	if in != "" {
		var err error
		if content, err = readNotebook(in); err != nil {
			return err
		}
		name = in
	}
	w, err := newWorkshop(name, o)
	if err != nil {
		return err
	}
	w.expression = expression
	result, err := w.run(ctx, content)
	if errors.Is(err, context.Canceled) {
		return &codedError{exitUsage, "interrupted", ""}
	}
	if err != nil {
		return err
	}
	last := result.Cells[len(result.Cells)-1]
	if last.Status != notebook.Done {
		printAsked(c, result, last)
		return &codedError{code: exitFails}
	}
	fmt.Fprint(c.OutOrStdout(), clean(last.Outcome.Printed))
	var value notebook.Value
	if len(last.Outcome.Values) > 0 {
		value = last.Outcome.Values[0].Value
	}
	text, err := answer(value, unit, digits)
	if err != nil {
		return err
	}
	fmt.Fprintln(c.OutOrStdout(), clean(text))
	return nil
}

// printAsked prints why there is no answer: the problems of the notebook, those
// of the expression last.
func printAsked(c *cobra.Command, result *notebook.Result, asked notebook.CellResult) {
	printProblems(c.ErrOrStderr(), result, styleOf(c.ErrOrStderr()))
	for _, reason := range asked.WaitsFor {
		fmt.Fprintf(c.ErrOrStderr(), "the expression needs %s\n", clean(reason))
	}
}

// answer prints a value in the wanted unit and digits.
func answer(v notebook.Value, unit string, digits int) (string, error) {
	if number, ok := v.(float64); ok {
		v = quantity.Bare(number)
	}
	q, ok := v.(quantity.Quantity)
	if !ok {
		if unit != "" {
			return "", &codedError{exitFails, fmt.Sprintf("--unit: got %s, which has no unit", valueText(v)), ""}
		}
		return longText(v), nil
	}
	if unit != "" {
		u, err := quantity.ParseUnit(unit)
		if err == nil {
			q, err = q.To(u)
		}
		if err != nil {
			return "", &codedError{exitUsage, "--unit: " + err.Error(), hintOf(err)}
		}
	}
	if digits > 0 {
		return q.Digits(digits), nil
	}
	return q.Short(), nil
}

// longText shows a table field by field.
func longText(v notebook.Value) string {
	d, ok := v.(*notebook.Data)
	if !ok {
		if _, function := v.(notebook.Function); function {
			return "a function"
		}
		return valueText(v)
	}
	if len(d.Pairs) == 0 {
		return "an empty table"
	}
	text := ""
	for i, p := range d.Pairs {
		if i > 0 {
			text += "\n"
		}
		text += fmt.Sprintf("%v = %s", p.Key, valueText(p.Value))
	}
	return text
}
