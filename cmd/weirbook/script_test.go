package main

import (
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"weirbook": main})
}

// TestScripts runs every script of testdata/scripts on the real command, one
// behaviour a script.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("..", "..", "testdata", "scripts"),
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"code": codeCommand, "tidy": tidyCommand, "bom": bomCommand, "await": awaitCommand,
		},
	})
}

// codeCommand is "code N program arguments": the exit code must be N, and the
// output may never hold what no output may hold.
func codeCommand(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: code N program [arguments]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("cannot run %s: %v", args[1], err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("got exit code %d, want %d", got, want)
	}
	for _, stream := range []string{"stdout", "stderr"} {
		text := ts.ReadFile(stream)
		for _, never := range []string{"\x1b", "0xc0", "goroutine", "runtime error", "%!"} {
			if strings.Contains(text, never) {
				ts.Fatalf("%s holds %q", stream, never)
			}
		}
	}
}

// tidyCommand is "tidy": no temporary or hidden file is left in the work folder.
func tidyCommand(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) > 0 {
		ts.Fatalf("usage: tidy")
	}
	work := ts.Getenv("WORK")
	ts.Check(filepath.WalkDir(work, func(path string, d fs.DirEntry, err error) error {
		if err != nil || path == work || path == filepath.Join(work, ".tmp") {
			return err
		}
		if name := d.Name(); strings.HasPrefix(name, ".") || strings.Contains(name, ".tmp") || strings.HasSuffix(name, "~") {
			ts.Fatalf("%s was left behind", path)
		}
		return nil
	}))
}

// bomCommand is "bom FILE": puts a byte-order mark before the file's content.
func bomCommand(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: bom file")
	}
	content := ts.ReadFile(args[0])
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte("\ufeff"+content), 0o666))
}

// awaitCommand is "await FILE": waits until the file is there.
func awaitCommand(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: await file")
	}
	for deadline := time.Now().Add(arrives); time.Now().Before(deadline); time.Sleep(10 * time.Millisecond) {
		if _, err := os.Stat(ts.MkAbs(args[0])); err == nil {
			return
		}
	}
	ts.Fatalf("%s does not come", args[0])
}
