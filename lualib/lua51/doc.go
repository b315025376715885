// Package lua51 holds the number and text rules of Lua 5.1 in plain Go: number
// texts, number printing, string.format, patterns, and the plain text
// functions of the string and table libraries.
//
// The rules are those of the Lua 5.1 Reference Manual (sections 2.2.1, 5.1,
// 5.4, 5.4.1 and 5.5), and where the manual is silent those of the C program
// on a 64-bit machine with 8-bit bytes and the C locale. The differences are
// deliberate and few:
//
//   - The texts "inf", "nan" and hexadecimal fractions are no numbers. C's
//     strtod takes them; the manual does not promise them.
//   - NaN prints as "nan" whatever its sign, because the sign of a computed NaN
//     depends on the processor.
//   - Format prints the Text of any other kind for %s, where C refuses it.
//   - Counts stay 64 bits wide (Rep, Char, Gsub) where C narrows to 32.
//   - A pattern that needs more than 200 nested tries is refused with "pattern
//     too complex"; C goes on until its stack ends.
//   - Byte gives at most 7,900 bytes; C's limit depends on the stack in use.
//
// Everything else that runs long or takes much memory is bounded by a Meter.
// Results share memory with their arguments where that saves a copy.
package lua51
