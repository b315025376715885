package main

import (
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"weirbook/notebook"
)

// options are what run, watch and ask share.
type options struct {
	set         []string
	timeLimit   time.Duration
	memoryLimit int
}

func (o *options) register(c *cobra.Command) {
	limits := notebook.DefaultLimits()
	c.Flags().StringArrayVar(&o.set, "set", nil, `a new value for an assumption: NAME=VALUE, as in --set electricity="0.40 EUR/kWh" (may be repeated)`)
	c.Flags().DurationVar(&o.timeLimit, "time-limit", limits.CellTime, "the longest a cell may run; all together may run three times as long")
	c.Flags().IntVar(&o.memoryLimit, "memory-limit", int(limits.Memory>>20), "the most memory to use, in MB")
}

func (o *options) limits() (notebook.Limits, error) {
	if o.timeLimit < 10*time.Millisecond || o.timeLimit > 24*time.Hour {
		return notebook.Limits{}, &codedError{exitUsage, fmt.Sprintf("--time-limit: got %s, want 10ms to 24h", o.timeLimit), "write --time-limit 30s"}
	}
	if o.memoryLimit < 32 || o.memoryLimit > 1<<20 {
		return notebook.Limits{}, &codedError{exitUsage, fmt.Sprintf("--memory-limit: got %d, want 32 to 1048576 MB", o.memoryLimit), "write --memory-limit 512"}
	}
	return notebook.Limits{CellTime: o.timeLimit, RunTime: 3 * o.timeLimit, Memory: uint64(o.memoryLimit) << 20}, nil
}

// overrides reads the values of --set.
func (o *options) overrides() (map[string]string, error) {
	values := map[string]string{}
	for _, s := range o.set {
		name, value, ok := strings.Cut(s, "=")
		name, value = strings.TrimSpace(name), strings.TrimSpace(value)
		if !ok || name == "" || value == "" {
			return nil, &codedError{exitUsage, fmt.Sprintf("--set: got %q, want NAME=VALUE", s), `write --set electricity="0.40 EUR/kWh"`}
		}
		if _, twice := values[name]; twice {
			return nil, &codedError{exitUsage, fmt.Sprintf("--set: got %s twice, want it once", name), ""}
		}
		values[name] = value
	}
	return values, nil
}
