package water

// OsmosisRun is the time and the reject water of a reverse osmosis unit.
type OsmosisRun struct {
	Hours   float64
	RejectL float64
	FeedL   float64 // tap water drawn in all
}

// OsmosisTime gives how long a unit runs for a volume of product.
//
// Units: L of product, L/h of product at the water's temperature and pressure,
// litres of reject per litre of product; h and L.
// Valid range: 0 to 10,000,000 L, above 0 to 10,000 L/h, ratio 0 to 20.
// Accuracy: exact for a steady flow; the printed flow of a membrane is for 25 °C
// and falls by about 3 % a kelvin below it (from memory).
// Source: volume over flow.
func OsmosisTime(productL, productLPerH, rejectRatio float64) (OsmosisRun, error) {
	err := first(
		within("product", "L", productL, 0, maxL),
		positive("flow", "L/h", productLPerH, 10_000),
		within("reject per product", "", rejectRatio, 0, 20))
	if err != nil {
		return OsmosisRun{}, err
	}
	return OsmosisRun{
		Hours:   productL / productLPerH,
		RejectL: productL * rejectRatio,
		FeedL:   productL * (1 + rejectRatio),
	}, nil
}

// BarrelL gives the size of a vessel in which the new water of a change is
// mixed.
//
// Units: L of new water, number of batches, share of the vessel filled; L.
// Valid range: above 0 to 10,000,000 L, 1 to 100 batches, share 0.1 to 1.
// Accuracy: exact; leave room to stir, 0.9 is common practice.
// Source: volume over batches and filling.
func BarrelL(newWaterL float64, batches int, filledShare float64) (float64, error) {
	err := first(
		positive("new water", "L", newWaterL, maxL),
		within("batches", "", float64(batches), 1, 100),
		within("filled share", "", filledShare, 0.1, 1))
	if err != nil {
		return 0, err
	}
	return newWaterL / float64(batches) / filledShare, nil
}
