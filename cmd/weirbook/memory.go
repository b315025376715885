package main

import (
	"runtime/debug"

	"weirbook/notebook"
)

// boundMemory makes the collector work harder near the memory limit, so that a
// cell that makes much garbage is not taken for one that keeps it.
func boundMemory(limits notebook.Limits) {
	debug.SetMemoryLimit(int64(limits.Memory / 4 * 3))
}
