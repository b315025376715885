// Package salinity holds the density of fresh, brackish and sea water and the
// salt that a change of salinity takes.
//
// Salinities are practical salinities (PSS-78, written PSU) and are read as
// grams of salt per kilogram of solution; temperatures are what a thermometer
// shows (ITS-90). Numbers go in and come out in SI units named in the names.
package salinity
