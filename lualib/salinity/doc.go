// Package salinity holds what salt does to water: density, specific gravity
// and hydrometers, conductivity, the salt of a mix, water changes, evaporation
// and the way from one salinity to another.
//
// Salinities are practical salinities (PSS-78, written PSU) and are read as
// grams of salt per kilogram of solution; temperatures are what a thermometer
// shows (ITS-90). Numbers go in and come out in SI units named in the names.
package salinity
