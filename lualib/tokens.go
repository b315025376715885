package lualib

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/yuin/gopher-lua/ast"
	"github.com/yuin/gopher-lua/parse"

	"weirbook/notebook"
	"weirbook/notebook/diag"
)

// token is one word of a cell's code. Lines count from 0, columns in characters
// from 1.
type token struct {
	kind   int
	text   string
	line   int
	column int
}

// The bounds of a cell's source. The compiler is recursive in nesting and
// quadratic in chains of operators, and hears no cancellation, so what it gets
// is bounded before.
const (
	maxCode    = 256 << 10 // bytes
	maxTokens  = 80_000
	maxNesting = 100
	maxChain   = 300 // operators in one expression
	maxElseif  = 200
	maxFields  = 25_000 // entries written in one pair of braces
)

// scan splits code into tokens.
func scan(code string) ([]token, *notebook.CodeProblem) {
	if len(code) > maxCode {
		return nil, problemAt(0, 0, fmt.Sprintf("got a cell of %d kB, want at most %d kB", len(code)>>10, maxCode>>10), "put long lists into a table and read them with rows")
	}
	lines := strings.Split(code, "\n")
	scanner := parse.NewScanner(strings.NewReader(code), "cell")
	lexer := &parse.Lexer{PrevTokenType: parse.TNil}
	var tokens []token
	at := columns{lines: lines, line: -1}
	for {
		t, err := scanner.Scan(lexer)
		if err != nil {
			return tokens, syntaxProblem(err, tokens, lines) // those before it still tell something
		}
		if t.Type < 0 {
			return tokens, nil
		}
		lexer.PrevTokenType = t.Type
		tokens = append(tokens, token{t.Type, t.Str, t.Pos.Line - 1, at.of(t.Pos.Line-1, t.Pos.Column)})
		if len(tokens) > maxTokens {
			return nil, problemAt(0, 0, fmt.Sprintf("got a cell of more than %d words, want less", maxTokens), "put long lists into a table and read them with rows")
		}
	}
}

// column turns the scanner's byte column (from 1) into one in characters.
func column(lines []string, line, bytes int) int {
	if line < 0 || line >= len(lines) {
		return 0
	}
	return utf8.RuneCountInString(lines[line][:min(max(bytes-1, 0), len(lines[line]))]) + 1
}

// columns is column for places that mostly rise, without counting a line anew
// for each of its words.
type columns struct {
	lines               []string
	line, bytes, before int // up to bytes of the line stand that many characters
}

func (c *columns) of(line, bytes int) int {
	if line < 0 || line >= len(c.lines) {
		return 0
	}
	to := min(max(bytes-1, 0), len(c.lines[line]))
	if line != c.line || to < c.bytes {
		c.line, c.bytes, c.before = line, 0, 0
	}
	c.before += utf8.RuneCountInString(c.lines[line][c.bytes:to])
	c.bytes = to
	return c.before + 1
}

func problemAt(line, column int, message, hint string) *notebook.CodeProblem {
	return &notebook.CodeProblem{Fault: diag.Fault{Message: message, Hint: hint}, Line: line, Column: column}
}

// syntaxProblem turns an error of the scanner or the parser into our grammar.
func syntaxProblem(err error, tokens []token, lines []string) *notebook.CodeProblem {
	var pe *parse.Error
	if !errors.As(err, &pe) {
		return problemAt(0, 0, "got code that cannot be read: "+err.Error(), "")
	}
	switch pe.Message {
	case "unterminated string":
		return unclosedText(pe, tokens, lines)
	case "unterminated multiline string", "invalid multiline comment":
		return unclosedLong(tokens, lines)
	}
	if pe.Pos.Line < 1 || pe.Pos.Line > len(lines) {
		if slip := slips(tokens); slip != nil {
			return slip
		}
		return endProblem(tokens, lines)
	}
	line := pe.Pos.Line - 1
	p := problemAt(line, column(lines, line, pe.Pos.Column), "", "")
	if slip := slips(tokens); slip != nil && slip.Line <= line {
		return slip
	}
	switch {
	case pe.Message == "Invalid token" || strings.Contains(pe.Message, "nvalid"):
		p.Message, p.Hint = fmt.Sprintf("got %q, which no name or number can hold", signAt(lines[line], p.Column, pe.Token)), "names are of the letters a to z, digits and _; texts stand between quotes"
		if pe.Token == "!" {
			p.Hint = hintFor(pe.Token)
		}
		if typographic.MatchString(lines[line]) {
			p.Hint = "write straight quotes: \" and not “ or ”"
		}
	default:
		p.Column = startOf(pe.Token, line, p.Column, tokens)
		p.Message = fmt.Sprintf("got %q here, want code that goes on from what stands before", pe.Token)
		p.Hint = hintFor(pe.Token)
	}
	return p
}

// startOf gives the column at which a word begins that the parser places at its
// end.
func startOf(word string, line, end int, tokens []token) int {
	for _, t := range tokens {
		if t.line == line && t.text == word && t.column <= end && end < t.column+utf8.RuneCountInString(word) {
			return t.column
		}
	}
	return end
}

// hintFor guesses at the usual slips.
func hintFor(word string) string {
	switch word {
	case "=":
		return "a comparison is written =="
	case "!":
		return "write not, and ~= for unequal"
	case "}", ")", "]":
		return "is a bracket or a comma missing before it?"
	case "end":
		return "there is one end too many, or then or do is missing before it"
	}
	return "is a comma, an operator, a quote, then or do missing before it?"
}

// endProblem says which opener lacks its end when the code stops too early.
func endProblem(tokens []token, lines []string) *notebook.CodeProblem {
	last := len(lines) - 1
	for last > 0 && strings.TrimSpace(lines[last]) == "" {
		last--
	}
	open := openers(tokens)
	if len(open) == 0 {
		return problemAt(last, 0, "got the end of the cell, want the rest of the expression", "")
	}
	o := open[len(open)-1]
	want := map[string]string{"{": "}", "(": ")", "[": "]", "repeat": "until"}[o.text]
	if want == "" {
		want = "end"
	}
	return &notebook.CodeProblem{
		Fault: diag.Fault{Message: fmt.Sprintf("got the end of the cell, want %q for this %q", want, o.text), Hint: fmt.Sprintf("write %s where it ends", want)},
		Line:  o.line, Column: o.column,
	}
}

// openers gives the tokens that are open at the end, outermost first.
func openers(tokens []token) []token {
	var open []token
	for _, t := range tokens {
		switch {
		case opens(t):
			open = append(open, t)
		case closes(t) && len(open) > 0:
			open = open[:len(open)-1]
		case t.kind == parse.TWhile || t.kind == parse.TFor:
			// their do opens
		}
	}
	return open
}

func opens(t token) bool {
	switch t.kind {
	case parse.TFunction, parse.TIf, parse.TDo, parse.TRepeat, '{', '(', '[':
		return true
	}
	return false
}

func closes(t token) bool {
	switch t.kind {
	case parse.TEnd, parse.TUntil, '}', ')', ']':
		return true
	}
	return false
}

// bounds refuses code that the compiler could not take in bounded time.
func bounds(tokens []token) *notebook.CodeProblem {
	depth, chain, elseifs, unary := 0, 0, 0, 0
	fields := []int{}
	for _, t := range tokens {
		switch {
		case opens(t):
			depth++
			fields = append(fields, 0)
			chain = 0
		case closes(t):
			depth--
			if len(fields) > 0 {
				fields = fields[:len(fields)-1]
			}
		}
		switch t.kind {
		case '+', '-', '*', '/', '%', '^', parse.T2Comma, parse.TAnd, parse.TOr, parse.TEqeq, parse.TNeq, '<', '>', parse.TLte, parse.TGte, parse.TNot, '#', '.', ':':
			chain++
			unary++
		case ',', ';':
			chain = 0
			if len(fields) > 0 {
				fields[len(fields)-1]++
			}
		case '=', parse.TLocal, parse.TReturn, parse.TThen, parse.TDo, parse.TEnd, parse.TElse:
			chain = 0
		case parse.TElseIf:
			elseifs++
			chain = 0
		}
		switch {
		case depth > maxNesting:
			return problemAt(t.line, t.column, fmt.Sprintf("got code nested more than %d deep, want less", maxNesting), "split it into several cells or functions")
		case chain > maxChain:
			return problemAt(t.line, t.column, fmt.Sprintf("got more than %d operators in one expression, want less", maxChain), "use a loop, or sum over a list")
		case elseifs > maxElseif:
			return problemAt(t.line, t.column, fmt.Sprintf("got more than %d elseif in a cell, want less", maxElseif), "use a table of cases")
		case len(fields) > 0 && fields[len(fields)-1] > maxFields:
			return problemAt(t.line, t.column, fmt.Sprintf("got a list of more than %d entries, want less", maxFields), "put long lists into a table and read them with rows")
		}
	}
	return nil
}

// digest is the fingerprint of the code without comments and spacing. Which
// words share a line counts, since messages name lines; lines without code do
// not.
func digest(kind notebook.CellKind, tokens []token) (notebook.Digest, []int) {
	h := notebook.NewHasher()
	h.Number(float64(kind))
	var lines []int
	for i, t := range tokens {
		if i == 0 || t.line != tokens[i-1].line {
			lines = append(lines, t.line)
			h.Bool(true)
		}
		h.Number(float64(t.kind))
		h.Text(t.text)
	}
	return h.Sum(), lines
}

// parseCode parses a cell's code into its syntax tree.
func parseCode(code string, tokens []token) (chunk []ast.Stmt, problem *notebook.CodeProblem) {
	defer func() {
		if r := recover(); r != nil {
			problem = problemAt(0, 0, "got code that cannot be read", "")
		}
	}()
	chunk, err := parse.Parse(strings.NewReader(code), "cell")
	if err != nil {
		return nil, syntaxProblem(err, tokens, strings.Split(code, "\n"))
	}
	return chunk, nil
}
