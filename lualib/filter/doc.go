// Package filter holds what a biological filter must carry and what carries
// it: ammonia from feed, what nitrification uses up, media, turnover and
// fishless cycling.
//
// TAN is total ammonia nitrogen, counted as N. Rates of nitrification scatter
// by a factor of 2 to 3, so whatever rests on them comes as a range.
package filter
