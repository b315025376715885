package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"weirbook/lualib"
	"weirbook/notebook"
	"weirbook/notebook/markdown"
	"weirbook/notebook/run"
	"weirbook/xlsx"
)

// runOptions are those of run and watch.
type runOptions struct {
	options
	output     string
	json       bool
	noWorkbook bool
}

func (o *runOptions) register(c *cobra.Command) {
	o.options.register(c)
	c.Flags().StringVarP(&o.output, "output", "o", "", "write the workbook to this file (default: beside the notebook)")
	c.Flags().BoolVar(&o.noWorkbook, "no-workbook", false, "write no workbook")
}

func newRunCommand() *cobra.Command {
	var o runOptions
	c := &cobra.Command{
		Use:   "run NOTEBOOK",
		Short: "Run a notebook once: print the summary, write the workbook",
		Long: `Run runs a notebook once, prints a summary and writes the workbook beside it.

Exit code 0: all is well; 1: a cell has an error or a check fails; 2: bad usage,
or a file cannot be read or written.`,
		Example: `  weirbook run room.md
  weirbook run room.md --set electricity="0.40 EUR/kWh" -o dear.xlsx`,
		Args: oneNotebook,
		RunE: func(c *cobra.Command, args []string) error {
			ctx, stop := interrupted(c)
			defer stop()
			return runOnce(ctx, c, args[0], &o)
		},
	}
	o.register(c)
	c.Flags().BoolVar(&o.json, "json", false, "print plan and values as JSON instead of the summary")
	return c
}

func oneNotebook(c *cobra.Command, args []string) error {
	if len(args) != 1 {
		return &codedError{exitUsage, fmt.Sprintf("%s: got %d arguments, want one notebook", c.Name(), len(args)), fmt.Sprintf("write weirbook %s room.md", c.Name())}
	}
	if args[0] == "" {
		return &codedError{exitUsage, c.Name() + ": got an empty name, want a notebook", fmt.Sprintf("write weirbook %s room.md", c.Name())}
	}
	return nil
}

// workshop holds what runs of one notebook share.
type workshop struct {
	path      string
	parser    *markdown.Parser
	engine    *lualib.Engine
	runner    *run.Runner
	overrides map[string]string
	options   *runOptions

	expression string // asked beside the notebook's own
}

func newWorkshop(path string, o *runOptions) (*workshop, error) {
	limits, err := o.limits()
	if err != nil {
		return nil, err
	}
	overrides, err := o.overrides()
	if err != nil {
		return nil, err
	}
	boundMemory(limits)
	engine := lualib.New()
	w := &workshop{path: path, parser: markdown.NewParser(), engine: engine, runner: run.New(engine, limits), overrides: overrides, options: o}
	if !o.noWorkbook && sameFile(path, w.output()) {
		return nil, &codedError{exitUsage, fmt.Sprintf("cannot write the workbook to %s: it is the notebook", w.output()), "write -o room.xlsx"}
	}
	return w, nil
}

// run runs the notebook's content.
func (w *workshop) run(ctx context.Context, content []byte) (*notebook.Result, error) {
	doc := w.parser.Parse(filepath.ToSlash(w.path), content)
	if w.expression != "" {
		if last := len(doc.Source) - 1; doc.Source[last] == "" {
			doc.Source = doc.Source[:last] // only the end of the line before
		}
		doc.Source = append(doc.Source, w.expression)
		doc.Cells = append(doc.Cells, w.asked(doc))
	}
	result, err := w.runner.Run(ctx, doc, w.overrides)
	var unknown *run.OverrideError
	if errors.As(err, &unknown) {
		return nil, &codedError{exitUsage, unknown.Error(), unknown.Hint}
	}
	return result, err
}

// output is the workbook's path.
func (w *workshop) output() string {
	if w.options.output != "" {
		return w.options.output
	}
	return workbookFor(w.path)
}

// writeWorkbook writes the workbook of a result, whole or not at all.
func (w *workshop) writeWorkbook(result *notebook.Result) error {
	if w.options.noWorkbook {
		return nil
	}
	var book bytes.Buffer
	if err := xlsx.Write(&book, result); err != nil {
		return fmt.Errorf("cannot make the workbook: %w", err)
	}
	return writeWhole(w.output(), book.Bytes())
}

func runOnce(ctx context.Context, c *cobra.Command, path string, o *runOptions) error {
	content, err := readNotebook(path)
	if err != nil {
		return err
	}
	w, err := newWorkshop(path, o)
	if err != nil {
		return err
	}
	result, err := w.run(ctx, content)
	if errors.Is(err, context.Canceled) {
		return &codedError{exitUsage, "interrupted", ""}
	}
	if err != nil {
		return err
	}
	writeErr := w.writeWorkbook(result)
	if err := report(c.OutOrStdout(), c.ErrOrStderr(), w, result, writeErr == nil); err != nil {
		return err
	}
	if writeErr != nil {
		return &codedError{exitUsage, writeErr.Error(), "is it open in another program? the old file is untouched; -o FILE writes elsewhere"}
	}
	return verdict(result)
}

// report prints the result as JSON or as the summary; problems go to the error
// stream.
func report(out, problems io.Writer, w *workshop, result *notebook.Result, written bool) error {
	if w.options.json {
		printProblems(problems, result, plainStyle)
		return writeJSON(out, result)
	}
	printProblems(problems, result, styleOf(problems))
	book := ""
	if written && !w.options.noWorkbook {
		book = w.output()
	}
	printSummary(out, result, book, styleOf(out))
	return nil
}

// verdict is the exit code of a result.
func verdict(result *notebook.Result) error {
	_, _, fails := result.Outcomes()
	if result.Errors() > 0 || fails > 0 {
		return &codedError{code: exitFails}
	}
	return nil
}

// asked makes a cell of the expression that is asked. Against a notebook it is a
// value in its text, which records nothing; by itself it may call anything, and
// what it records is thrown away.
func (w *workshop) asked(doc *notebook.Document) *notebook.Cell {
	cell := &notebook.Cell{Kind: notebook.Expression, Code: w.expression, Index: len(doc.Cells), Lines: []notebook.CodeLine{{Number: len(doc.Source)}}}
	analysis := w.engine.Analyse(cell.Kind, cell.Code)
	if len(doc.Cells) == 0 && len(analysis.Own.Makes) > 0 && len(analysis.Problems) == 1 && !strings.ContainsAny(w.expression, "\n\r") {
		cell.Kind, cell.Code = notebook.Calculation, askedName+" = "+w.expression
		cell.Lines[0].Indent = -len(askedName + " = ")
	}
	return cell
}

// askedName is the name that the asked expression is given.
const askedName = "answer"
