package salinity

import (
	"bytes"
	"encoding/csv"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib/published"
)

// teos10Grid prints what the TEOS-10 toolbox makes of a grid: density and
// density ratios of the full Gibbs function for salt of the reference
// composition, and conductivity.
const teos10Grid = `
import gsw
def rho(s, t):
    return float(gsw.rho_t_exact(s * 35.16504 / 35, t, 0))
print("S,t_C,rho,sg,C_mS_cm,S_back")
for s10 in [0, 1, 3, 5, 10, 15, 19, 20, 21] + list(range(30, 421, 15)):
    for t in range(0, 41, 2):
        s = s10 / 10
        c = float(gsw.C_from_SP(s, t, 0))
        print(s, t, repr(rho(s, t)), repr(rho(s, t) / rho(0, t)), repr(c), repr(float(gsw.SP_from_C(c, t, 0))), sep=",")
`

// teos10 runs the toolbox once, with Debian's interpreter if there is one, and
// gives its rows.
func teos10(t *testing.T) []row {
	t.Helper()
	var faults []string
	for _, interpreter := range []string{"/usr/bin/python3", "python3"} {
		var out, errs bytes.Buffer
		command := exec.Command(interpreter, "-c", teos10Grid)
		command.Stdout, command.Stderr = &out, &errs
		if err := command.Run(); err != nil {
			faults = append(faults, interpreter+": "+err.Error()+" "+errs.String())
			continue
		}
		lines, err := csv.NewReader(&out).ReadAll()
		require.NoError(t, err)
		return published.Rows(lines)
	}
	if os.Getenv("WEIRBOOK_PEERS") == "required" {
		require.Fail(t, "python3-gsw is required", strings.Join(faults, "\n"))
	}
	t.Skip("python3-gsw is not installed")
	return nil
}

// An independent library: the equation of state within the 0.009 kg/m3 that
// EOS-80 and TEOS-10 differ, conductivity to a millionth. The bare equations
// are compared, as the grid is wider than the practical scale's 35 degC.
func TestTEOS10Agrees(t *testing.T) {
	rows := teos10(t)
	require.Greater(t, len(rows), 700)
	for _, r := range rows {
		s, c := r.Num(t, "S"), r.Num(t, "t_C")
		density, err := DensityKgPerM3(s, c)
		require.NoError(t, err)
		require.InDelta(t, r.Num(t, "rho"), density, 0.009, "%v", r)
		sg, err := ToSG(s, At(c))
		require.NoError(t, err)
		limit := 1e-5
		if c >= 14 && c <= 26 {
			limit = 5e-6
		}
		require.InDelta(t, r.Num(t, "sg"), sg, limit, "%v", r)
		require.InDelta(t, r.Num(t, "C_mS_cm"), conducted(s, c), 1e-6, "%v", r)
		if s > 0 { // the toolbox takes back nothing from what it gives pure water
			require.InDelta(t, r.Num(t, "S_back"), fromConducted(r.Num(t, "C_mS_cm"), c), 1e-6, "%v", r)
		}
		require.InDelta(t, s, fromConducted(r.Num(t, "C_mS_cm"), c), 1e-6, "%v", r)
		require.InDelta(t, r.Num(t, "C_mS_cm"), conducted(fromConducted(r.Num(t, "C_mS_cm"), c), c), 1e-6, "%v", r)
	}
}
