package lua51

// A charSet is a set of bytes, one bit each.
type charSet [4]uint64

func (s *charSet) has(c byte) bool { return s[c>>6]>>(c&63)&1 != 0 }

func (s *charSet) add(c byte) { s[c>>6] |= 1 << (c & 63) }

// addRange adds the bytes from lo to hi, none when hi is below lo.
func (s *charSet) addRange(lo, hi byte) {
	for word := range s {
		first, last := max(int(lo)-64*word, 0), min(int(hi)-64*word, 63)
		if first <= last {
			s[word] |= ^uint64(0) << first & (^uint64(0) >> (63 - last))
		}
	}
}

func (s *charSet) addSet(t *charSet) {
	for word := range s {
		s[word] |= t[word]
	}
}

func (s *charSet) invert() {
	for word := range s {
		s[word] = ^s[word]
	}
}

// classes holds the set of each class letter (manual 5.4.1), nil for a
// character that stands for itself. Letters and digits are those of ASCII, as
// in the C locale.
var classes = buildClasses()

func buildClasses() (table [256]*charSet) {
	ranges := map[byte]string{
		'a': "azAZ", 'c': "\x00\x1f\x7f\x7f", 'd': "09", 'l': "az",
		'p': "!/:@[`{~", 's': "\t\r  ", 'u': "AZ", 'w': "09azAZ",
		'x': "09afAF", 'z': "\x00\x00",
	}
	for letter, pairs := range ranges {
		set, complement := new(charSet), new(charSet)
		for i := 0; i < len(pairs); i += 2 {
			set.addRange(pairs[i], pairs[i+1])
		}
		complement.addSet(set)
		complement.invert()
		table[letter], table[letter-'a'+'A'] = set, complement
	}
	return table
}

// setOf reads the body of a set: ranges, classes and single bytes. A minus
// sign after a class or at either end stands for itself.
func setOf(body string) *charSet {
	set := new(charSet)
	for i := 0; i < len(body); i++ {
		switch {
		case body[i] == '%':
			i++
			if class := classes[body[i]]; class != nil {
				set.addSet(class)
			} else {
				set.add(body[i])
			}
		case i+2 < len(body) && body[i+1] == '-':
			set.addRange(body[i], body[i+2])
			i += 2
		default:
			set.add(body[i])
		}
	}
	return set
}
