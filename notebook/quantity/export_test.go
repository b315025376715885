package quantity

// AtomSymbols lists the symbols of the table of units, without prefixes.
func AtomSymbols() []string {
	symbols := make([]string, len(atoms))
	for i, a := range atoms {
		symbols[i] = a.symbol
	}
	return symbols
}

// PrefixedSymbols gives, for every unit symbol with a prefix, the prefix and
// the symbol behind it.
func PrefixedSymbols() map[string][2]string {
	prefixed := map[string][2]string{}
	for _, a := range atoms {
		for _, prefix := range a.prefixes {
			prefixed[string(prefix)+a.symbol] = [2]string{string(prefix), a.symbol}
		}
	}
	return prefixed
}

// AliasTexts gives the table of other ways to write a unit.
func AliasTexts() map[string]string { return aliases }

// AnswerTexts gives the advice for units that are refused.
func AnswerTexts() map[string]string { return answers }
