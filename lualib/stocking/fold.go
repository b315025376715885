package stocking

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// fold writes a name so that spellings of one name become equal: small
// letters, no accents or apostrophes, words with single spaces between them.
func fold(name string) string {
	var b strings.Builder
	for _, letter := range norm.NFKD.String(strings.ToLower(name)) {
		switch {
		case unicode.Is(unicode.Mn, letter) || strings.ContainsRune("'’ʼ`", letter):
			// an accent on the letter before it, or an apostrophe
		case unicode.IsLetter(letter) || unicode.IsDigit(letter):
			b.WriteRune(letter)
		default:
			b.WriteByte(' ')
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}
