package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// mayImport is the table of packages: what each may import of ours. A package
// that is missing here must not exist.
var mayImport = map[string][]string{
	"cmd/weirbook":      {"*"},
	"notebook":          {"notebook/diag", "notebook/quantity", "notebook/plan"},
	"notebook/diag":     {},
	"notebook/quantity": {},
	"notebook/plan":     {"notebook/quantity"},
	"notebook/markdown": {"notebook", "notebook/diag"},
	"notebook/run":      {"notebook", "notebook/diag", "notebook/quantity", "notebook/plan"},
	"notebook/watch":    {},
	"lualib":            {"notebook", "notebook/diag", "notebook/quantity", "notebook/plan", "lualib/lua51", "lualib/volume", "lualib/salinity", "lualib/water", "lualib/filter", "lualib/stocking"},
	"lualib/lua51":      {},
	"lualib/volume":     {},
	"lualib/salinity":   {},
	"lualib/water":      {"lualib/salinity"},
	"lualib/filter":     {"lualib/salinity", "lualib/water"},
	"lualib/stocking":   {},
	"lualib/published":  {},
	"xlsx":              {"notebook", "notebook/diag", "notebook/quantity", "notebook/plan"},
	"xlsx/recalc":       {},
}

// onlyIn names the packages that may import a library from elsewhere.
var onlyIn = map[string][]string{
	"github.com/yuin/gopher-lua":     {"lualib"},
	"github.com/yuin/goldmark":       {"notebook/markdown"},
	"github.com/fsnotify/fsnotify":   {"notebook/watch"},
	"github.com/xuri/excelize":       {"xlsx", "xlsx/recalc"},
	"github.com/spf13":               {"cmd/weirbook"},
	"golang.org/x/term":              {"cmd/weirbook"},
	"golang.org/x/text/currency":     {"notebook/quantity"},
	"golang.org/x/text/unicode/norm": {"lualib/stocking"},
}

// testsMay widens the table for test files: tests of the cells run whole
// notebooks.
var testsMay = map[string][]string{
	"lualib": {"notebook/markdown", "notebook/run"},
	"xlsx":   {"xlsx/recalc"},

	"lualib/volume":   {"lualib/published"},
	"lualib/salinity": {"lualib/published"},
	"lualib/water":    {"lualib/published"},
	"lualib/filter":   {"lualib/published"},
	"lualib/stocking": {"lualib/published"},
}

// TestImports reads every import of the module and compares it with the table.
func TestImports(t *testing.T) {
	root := filepath.Join("..", "..")
	seen := map[string]bool{}
	err := filepath.WalkDir(root, func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(file, ".go") {
			return err
		}
		relative, err := filepath.Rel(root, file)
		require.NoError(t, err)
		pkg := path.Dir(filepath.ToSlash(relative))
		seen[pkg] = true
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		require.NoError(t, err)
		for _, spec := range parsed.Imports {
			imported, err := strconv.Unquote(spec.Path.Value)
			require.NoError(t, err)
			checkImport(t, relative, pkg, imported)
		}
		return nil
	})
	require.NoError(t, err)
	for pkg := range seen {
		require.Contains(t, mayImport, pkg, "the package is missing from the table")
	}
	for pkg := range mayImport {
		require.True(t, seen[pkg], "the table names %s, which does not exist", pkg)
	}
}

func checkImport(t *testing.T, file, pkg, imported string) {
	t.Helper()
	for library, packages := range onlyIn {
		if imported == library || strings.HasPrefix(imported, library+"/") {
			// tests of the workbook read it back with the same library
			if !slices.Contains(packages, pkg) && !(strings.HasSuffix(file, "_test.go") && pkg == "cmd/weirbook") {
				t.Errorf("%s imports %s, which only %v may", file, imported, packages)
			}
		}
	}
	ours, ok := strings.CutPrefix(imported, "weirbook/")
	if !ok {
		return
	}
	allowed := mayImport[pkg]
	if strings.HasSuffix(file, "_test.go") {
		allowed = append(slices.Clone(allowed), append(testsMay[pkg], pkg)...)
	}
	if !slices.Contains(allowed, "*") && !slices.Contains(allowed, ours) {
		t.Errorf("%s imports %s, which the table does not allow", file, ours)
	}
}
