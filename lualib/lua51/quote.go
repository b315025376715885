package lua51

// Quote writes a text as a literal that Lua reads back (manual 5.4,
// string.format %q): in double quotes, with quotes, backslashes and line ends
// behind a backslash, and carriage returns and zero bytes as \r and \000.
func Quote(s string) string {
	out := make([]byte, 0, quotedLen(s))
	out = append(out, '"')
	for i := range len(s) {
		switch c := s[i]; c {
		case '"', '\\', '\n':
			out = append(out, '\\', c)
		case '\r':
			out = append(out, `\r`...)
		case 0:
			out = append(out, `\000`...)
		default:
			out = append(out, c)
		}
	}
	return string(append(out, '"'))
}

// quotedLen is the length of Quote(s).
func quotedLen(s string) int {
	n := len(s) + 2
	for i := range len(s) {
		switch s[i] {
		case '"', '\\', '\n', '\r':
			n++
		case 0:
			n += 3
		}
	}
	return n
}
