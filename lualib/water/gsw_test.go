package water

import (
	"bytes"
	"encoding/csv"
	"os"
	"os/exec"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/published"
	"weirbook/lualib/salinity"
)

// oxygenGrid prints the oxygen saturation of the fit of Garcia & Gordon 1992
// in umol/kg, as the TEOS-10 toolbox has it.
const oxygenGrid = `
import gsw
print("S,t_C,umol_kg")
for s in range(0, 43):
    for t in range(0, 41):
        print(s, t, repr(float(gsw.O2sol_SP_pt(s, t))), sep=",")
`

// The formula here is Benson & Krause's; the toolbox has Garcia & Gordon's fit
// to the same data, per mass. It becomes mg/L with 31.9988 g/mol and the
// EOS-80 density. The bare equation is compared above its own 40 PSU.
func TestGarciaAndGordonAgree(t *testing.T) {
	var out, faults bytes.Buffer
	command := exec.Command("/usr/bin/python3", "-c", oxygenGrid)
	command.Stdout, command.Stderr = &out, &faults
	if err := command.Run(); err != nil {
		if os.Getenv("WEIRBOOK_PEERS") == "required" {
			require.NoError(t, err, "python3-gsw is required: %s", faults.String())
		}
		t.Skip("python3-gsw is not installed")
	}
	lines, err := csv.NewReader(&out).ReadAll()
	require.NoError(t, err)
	rows := published.Rows(lines)
	require.Equal(t, 43*41, len(rows))
	for _, r := range rows {
		s, c := r.Num(t, "S"), r.Num(t, "t_C")
		density, err := salinity.DensityKgPerM3(s, c)
		require.NoError(t, err)
		want := r.Num(t, "umol_kg") * 31.9988e-3 * density / 1000
		require.InDelta(t, want, oxygenAtSeaLevel(s, c), 0.005, "%v", r)
	}
}
