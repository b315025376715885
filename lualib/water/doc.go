// Package water holds what water itself does: the oxygen it takes up, its
// physical properties, ammonia, hardness, carbon dioxide, nitrate under water
// changes, dechlorination, dosing and blending.
//
// Salinities are practical salinities (PSU), read as grams of salt per
// kilogram of solution; temperatures are what a thermometer shows (ITS-90).
// Concentrations are milligrams per litre and say what they are counted as.
// Volumes are net volumes: the water that is really there.
package water
