// Package stocking holds a table of commonly kept species and the planning
// models of stocking: body mass from length, growth, oxygen and feed.
//
// Fish differ: single values scatter by a factor of two to four around every
// model here. Results carry a range where the source gives one.
package stocking
