package watch_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"weirbook/notebook/watch"
)

// A run is abandoned as soon as a newer content is there.
func Example() {
	folder, err := os.MkdirTemp("", "notes")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(folder)
	notebook := filepath.Join(folder, "room.md")
	save := func(text string) { _ = os.WriteFile(notebook, []byte(text), 0o600) }
	save("volume = 400")

	ctx, end := context.WithCancel(context.Background())
	defer end()
	w, err := watch.Start(ctx, watch.Options{Files: []watch.File{{Path: notebook}}, Patience: time.Second})
	if err != nil {
		panic(err)
	}
	abandon := func() {}
	for change := range w.Changes() {
		abandon()
		var run context.Context
		run, abandon = context.WithCancel(ctx)
		switch f := change.Files[0]; {
		case f.Missing():
			fmt.Println("the notebook is away")
			end()
		case f.Err != nil:
			fmt.Println(f.Err)
		case string(f.Content) == "volume = 400":
			fmt.Println("first:", string(f.Content))
			go func() { save("volume = 450"); <-run.Done() }()
		default:
			fmt.Println("then:", string(f.Content))
			_ = os.Remove(notebook)
		}
	}
	abandon()
	fmt.Println("ended")
	// Output:
	// first: volume = 400
	// then: volume = 450
	// the notebook is away
	// ended
}
