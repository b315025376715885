package filter

// TurnoverPerH gives how often an hour the filter moves the tank's water.
//
// Units: L/h really flowing (not the pump's print), net litres; per hour.
// Valid range: 0 to 10,000,000 L/h, above 0 to 10,000,000 L.
// Accuracy: exact for the flow given.
// Source: flow over volume.
func TurnoverPerH(flowLPerH, waterL float64) (float64, error) {
	err := first(within("flow", "L/h", flowLPerH, 0, maxL), positive("water", "L", waterL, maxL))
	if err != nil {
		return 0, err
	}
	return flowLPerH / waterL, nil
}

// FlowLPerH gives the flow of a wanted turnover.
//
// Units: turnovers per hour, net litres; L/h.
// Valid range: 0 to 100 per hour, above 0 to 10,000,000 L.
// Accuracy: exact.
// Source: turnover times volume.
func FlowLPerH(turnoverPerH, waterL float64) (float64, error) {
	err := first(within("turnover", "per hour", turnoverPerH, 0, 100), positive("water", "L", waterL, maxL))
	if err != nil {
		return 0, err
	}
	return turnoverPerH * waterL, nil
}
