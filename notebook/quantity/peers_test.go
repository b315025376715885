package quantity_test

import (
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// gnuUnits converts pairs of "from" and "to" by one process of GNU units. When
// the program is not installed the test is skipped, or fails where the
// environment says that peers are required.
func gnuUnits(t *testing.T, pairs [][2]string) []float64 {
	t.Helper()
	path, err := exec.LookPath("units")
	if err != nil {
		if os.Getenv("WEIRBOOK_PEERS") == "required" {
			require.NoError(t, err, "GNU units is required and not installed")
		}
		t.Skip("GNU units is not installed")
	}
	var asked strings.Builder
	for _, pair := range pairs {
		asked.WriteString(pair[0] + "\n" + pair[1] + "\n")
	}
	command := exec.Command(path, "-t", "-o", "%.15g")
	command.Stdin = strings.NewReader(asked.String())
	command.Env = append(os.Environ(), "LC_ALL=C", "UNITS_ENGLISH=US")
	answer, err := command.CombinedOutput()
	require.NoError(t, err, string(answer))
	lines := strings.Split(strings.TrimSpace(string(answer)), "\n")
	require.Len(t, lines, len(pairs), string(answer))
	values := make([]float64, len(lines))
	for i, line := range lines {
		values[i], err = strconv.ParseFloat(line, 64)
		require.NoError(t, err, "%s to %s: %s", pairs[i][0], pairs[i][1], line)
	}
	return values
}
