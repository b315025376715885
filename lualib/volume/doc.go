// Package volume measures tanks: how much water they hold, how large their
// surface is, how much material their walls take, and what a bed of substrate
// displaces.
//
// A shape is given by its outside dimensions in metres, the thickness of walls
// and bottom, and a fill height above the inside of the bottom. Every shape is
// a pair of outlines seen from above, one of the outside and one of the
// inside; what follows from the outlines is worked out in one place, Measure.
package volume
