package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/cobra"
)

//go:embed starter.md
var starter []byte

func newNewCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "new FILE",
		Short:   "Write a small starter notebook",
		Long:    `New writes a small, commented notebook that runs. It never overwrites a file.`,
		Example: `  weirbook new room.md`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) != 1 {
				return &codedError{exitUsage, fmt.Sprintf("new: got %d arguments, want one file", len(args)), "write weirbook new room.md"}
			}
			if args[0] == "" {
				return &codedError{exitUsage, "new: got an empty name, want a file", "write weirbook new room.md"}
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			path := args[0]
			if err := writeNew(path); err != nil {
				return err
			}
			fmt.Fprintf(c.OutOrStdout(), "wrote %s; now: weirbook watch %s\n", path, path)
			return nil
		},
	}
}

// writeNew writes the starter to a file that must not exist.
func writeNew(path string) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return &codedError{exitUsage, fmt.Sprintf("new: %s is there already and stays as it is", path), "choose another name"}
	}
	if err != nil {
		return &codedError{exitUsage, fmt.Sprintf("new: cannot write %s: %v", path, plainError(err)), ""}
	}
	_, err = f.Write(starter)
	if closeErr := f.Close(); err == nil {
		err = closeErr
	}
	if err != nil {
		os.Remove(path)
		return &codedError{exitUsage, fmt.Sprintf("new: cannot write %s: %v", path, plainError(err)), ""}
	}
	return nil
}
