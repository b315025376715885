package main

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"weirbook/notebook"
	"weirbook/notebook/watch"
)

func newWatchCommand() *cobra.Command {
	var o runOptions
	var poll bool
	c := &cobra.Command{
		Use:   "watch NOTEBOOK",
		Short: "Run a notebook, then again on every save",
		Long: `Watch runs a notebook and runs it again on every save, until interrupted
(Ctrl-C). It prints what changed and writes the workbook each time.`,
		Example: `  weirbook watch room.md`,
		Args:    oneNotebook,
		RunE: func(c *cobra.Command, args []string) error {
			ctx, stop := interrupted(c)
			defer stop()
			return watchNotebook(ctx, c, args[0], &o, poll)
		},
	}
	o.register(c)
	c.Flags().BoolVar(&poll, "poll", false, "look at the file by the clock, for folders that send no events (network drives)")
	return c
}

// pollEvery is how often --poll looks.
const pollEvery = 500 * time.Millisecond

// watcher is a watch under way.
type watcher struct {
	*workshop
	command *cobra.Command
	shown   *memory // what was shown last; nil before the first run
}

func watchNotebook(ctx context.Context, c *cobra.Command, path string, o *runOptions, poll bool) error {
	content, err := readNotebook(path)
	if err != nil {
		return err
	}
	w, err := newWorkshop(path, o)
	if err != nil {
		return err
	}
	options := watch.Options{Files: []watch.File{{Path: path, Content: content}}}
	if poll {
		options.Poll = pollEvery
	}
	changes, err := watch.Start(ctx, options)
	if err != nil {
		return unreadable(fmt.Errorf("cannot watch %s: %w", path, err), "try --poll")
	}
	v := &watcher{workshop: w, command: c}
	return v.loop(ctx, changes.Changes(), content)
}

// loop runs content after content; a newer one ends a run under way.
func (v *watcher) loop(ctx context.Context, changes <-chan watch.Change, content []byte) error {
	for {
		running, abandon := context.WithCancel(ctx)
		done := make(chan outcome, 1)
		go func() { done <- v.attempt(running, content) }()
		var next []byte
		var finished *outcome
		for next == nil {
			select {
			case change, open := <-changes:
				if !open {
					abandon()
					<-waitFor(done, finished)
					fmt.Fprintln(v.command.OutOrStdout(), "watch ended")
					return nil
				}
				next = v.newContent(change)
			case o := <-done:
				finished, done = &o, nil
				if err := v.show(o); err != nil {
					abandon()
					return err
				}
			}
		}
		abandon()
		if finished == nil {
			<-done
		}
		content = next
	}
}

// waitFor gives a channel that is ready once a run has ended.
func waitFor(done chan outcome, finished *outcome) <-chan outcome {
	if finished == nil {
		return done
	}
	ready := make(chan outcome, 1)
	ready <- *finished
	return ready
}

// outcome is what a run of the watch gave.
type outcome struct {
	result   *notebook.Result
	err      error
	writeErr error
}

// attempt runs the content and writes the workbook, unless it is abandoned.
func (v *watcher) attempt(ctx context.Context, content []byte) outcome {
	result, err := v.run(ctx, content)
	if err != nil {
		return outcome{err: err}
	}
	if err := ctx.Err(); err != nil {
		return outcome{err: err} // a newer content is there: its workbook is the one to write
	}
	return outcome{result: result, writeErr: v.writeWorkbook(result)}
}

// newContent takes the notebook's content out of a change, or says why there is
// none.
func (v *watcher) newContent(change watch.Change) []byte {
	for _, f := range change.Files {
		switch {
		case f.Missing():
			fmt.Fprintf(v.command.ErrOrStderr(), "weirbook: %s is gone; waiting for it to come back\n", v.path)
		case f.Err != nil:
			fmt.Fprintf(v.command.ErrOrStderr(), "weirbook: cannot read %s: %v; waiting\n", v.path, plainError(f.Err))
		case len(f.Content) > maxNotebook:
			fmt.Fprintf(v.command.ErrOrStderr(), "weirbook: %s is larger than %d MB; waiting for a smaller one\n", v.path, maxNotebook>>20)
		default:
			if f.Content == nil {
				return []byte{}
			}
			return f.Content
		}
	}
	return nil
}

// show prints what a run gave: all of it the first time, then what changed.
func (v *watcher) show(o outcome) error {
	out, problems := v.command.OutOrStdout(), v.command.ErrOrStderr()
	if errors.Is(o.err, context.Canceled) {
		return nil
	}
	var coded *codedError
	if errors.As(o.err, &coded) && v.shown == nil {
		return coded
	}
	if o.err != nil {
		fmt.Fprintf(problems, "weirbook: %v\n", o.err)
		return nil
	}
	printProblems(problems, o.result, styleOf(problems))
	if v.shown == nil {
		book := ""
		if o.writeErr == nil && !v.options.noWorkbook {
			book = v.output()
		}
		printSummary(out, o.result, book, styleOf(out))
		v.shown = newMemory(o.result)
	} else {
		printChanges(out, v.shown, o.result, styleOf(out))
	}
	if o.writeErr != nil {
		fmt.Fprintf(problems, "weirbook: %v; is it open in another program? the old file is untouched\n", o.writeErr)
	}
	return nil
}
