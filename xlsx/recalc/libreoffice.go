package recalc

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// patience bounds one conversion; the first one makes a profile.
const patience = 3 * time.Minute

// LibreOffice strips the workbook, has LibreOffice work out every formula, and
// gives the result. The test is skipped where LibreOffice is not installed, and
// fails there when the environment says WEIRBOOK_PEERS=required.
func LibreOffice(t testing.TB, xlsx []byte) []byte {
	t.Helper()
	office := find(t)
	stripped, err := Strip(xlsx)
	require.NoError(t, err)
	folder := t.TempDir()
	in, out := filepath.Join(folder, "in.xlsx"), filepath.Join(folder, "out")
	require.NoError(t, os.WriteFile(in, stripped, 0o600))
	ctx, stop := context.WithTimeout(context.Background(), patience)
	defer stop()
	// a profile of its own, so that it neither meets nor waits for another one
	profile := "-env:UserInstallation=file://" + filepath.Join(folder, "profile")
	printed, err := exec.CommandContext(ctx, office, profile, "--headless", "--convert-to", "xlsx", "--outdir", out, in).CombinedOutput()
	require.NoError(t, err, "soffice said: %s", printed)
	result, err := os.ReadFile(filepath.Join(out, "in.xlsx"))
	require.NoError(t, err, "soffice said: %s", printed)
	return result
}

func find(t testing.TB) string {
	t.Helper()
	office, err := exec.LookPath("soffice")
	if err == nil {
		return office
	}
	if os.Getenv("WEIRBOOK_PEERS") == "required" {
		require.NoError(t, err, "soffice is required")
	}
	t.Skip("soffice is not installed: formulas are not worked out anew")
	return ""
}
