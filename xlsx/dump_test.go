package xlsx_test

import (
	"os"
	"testing"
)

func TestDump(t *testing.T) {
	os.WriteFile("/tmp/xl/sample.xlsx", write(t, sample()), 0o644)
	os.WriteFile("/tmp/xl/incomplete.xlsx", write(t, incomplete()), 0o644)
	os.WriteFile("/tmp/xl/large.xlsx", write(t, large(5000, 200, 1000)), 0o644)
}
