// Command weirbook runs a plain-text project notebook of a fish room and writes
// a budget and build workbook from it.
package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"

	"github.com/spf13/cobra"
)

// Exit codes.
const (
	exitFine  = 0
	exitFails = 1 // a cell has an error or a check fails
	exitUsage = 2 // bad usage or unreadable input
)

func main() { os.Exit(realMain()) }

// realMain runs the command line and gives the exit code.
func realMain() int {
	debug.SetGCPercent(400) // short runs: less collecting for more speed, bounded by --memory-limit
	root := newRoot()
	err := root.Execute()
	var coded *codedError
	switch {
	case err == nil:
		return exitFine
	case errors.As(err, &coded):
		if coded.message != "" {
			fmt.Fprintln(root.ErrOrStderr(), "weirbook: "+coded.message)
		}
		if coded.hint != "" {
			fmt.Fprintln(root.ErrOrStderr(), "  hint: "+coded.hint)
		}
		return coded.code
	default:
		fmt.Fprintln(root.ErrOrStderr(), "weirbook: "+usageText(root, err))
		return exitUsage
	}
}

// codedError ends the command with a code; what there is to say may have been
// said.
type codedError struct {
	code          int
	message, hint string
}

func (e *codedError) Error() string { return e.message }

func unreadable(err error, hint string) error {
	return &codedError{exitUsage, err.Error(), hint}
}

func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:   "weirbook",
		Short: "Plan and build a room of aquariums from one plain-text notebook",
		Long: `Weirbook runs a plain-text notebook: CommonMark notes, cells of Lua that
calculate, and tables. It prints what came out, warns before something breaks,
leaks, trips or dies, and writes a budget and build workbook for people who
never see the notebook.

Start with: weirbook new room.md`,
		SilenceUsage: true, SilenceErrors: true,
		DisableSuggestions: true, // usageText gives the hints
	}
	root.SetOut(os.Stdout)
	root.SetErr(os.Stderr)
	root.SetHelpCommand(newHelpCommand())
	root.AddCommand(newRunCommand(), newWatchCommand(), newNewCommand(), newAskCommand(), newLibCommand())
	root.InitDefaultCompletionCmd()
	for _, c := range root.Commands() {
		if c.Name() == "completion" {
			// what runs has its arguments checked: an unknown shell is an error
			c.RunE = func(c *cobra.Command, _ []string) error { return c.Help() }
		}
	}
	return root
}

// newHelpCommand explains a command, and refuses one that is not there.
func newHelpCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "help [COMMAND]",
		Short: "Explain a command",
		RunE: func(c *cobra.Command, args []string) error {
			found, _, err := c.Root().Find(args)
			if err != nil {
				return err
			}
			found.InitDefaultHelpFlag()
			return found.Help()
		},
	}
}

// interrupted gives a context that ends with the command's own, and on Ctrl-C.
func interrupted(c *cobra.Command) (ctx context.Context, stop func()) {
	return signal.NotifyContext(c.Context(), os.Interrupt, syscall.SIGTERM)
}
