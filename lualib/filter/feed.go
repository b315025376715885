package filter

// tanPerProtein is the share of a feed's protein that comes out as TAN: 0.16
// of protein is nitrogen, 0.8 of that is taken up, 0.8 of that excreted, 0.9 of
// that as ammonia.
const tanPerProtein = 0.092

// nitrogenInProtein is the nitrogen of protein that nobody eats.
const nitrogenInProtein = 0.16

// TANGPerDay gives the total ammonia nitrogen that eaten feed brings.
//
// Units: g of dry feed per day, protein as a share of its mass; g N per day.
// Valid range: 0 to 100,000 g/d, protein 0.2 to 0.7. Turn frozen and live food
// into dry mass first (about 20 % dry, common practice).
// Accuracy: about 20 % for pelleted feed of 30 to 50 % protein (a judgement).
// Source: Timmons & Ebeling, Recirculating Aquaculture (from memory; the
// factor 0.092 seen in use).
func TANGPerDay(feedGPerDay, proteinShare float64) (float64, error) {
	if err := checkFeed(feedGPerDay, proteinShare); err != nil {
		return 0, err
	}
	return feedGPerDay * proteinShare * tanPerProtein, nil
}

// TANOfUneatenGPerDay gives the TAN of feed that rots instead of being eaten:
// in time all its nitrogen.
//
// Units and valid range: as TANGPerDay.
// Accuracy: an upper bound; what is netted out does not count.
// Source: 16 % nitrogen in protein.
func TANOfUneatenGPerDay(uneatenGPerDay, proteinShare float64) (float64, error) {
	if err := checkFeed(uneatenGPerDay, proteinShare); err != nil {
		return 0, err
	}
	return uneatenGPerDay * proteinShare * nitrogenInProtein, nil
}

// feedGPerDay is TANGPerDay backwards.
func feedGPerDay(tanGPerDay, proteinShare float64) float64 {
	return tanGPerDay / (proteinShare * tanPerProtein)
}

func checkFeed(feedGPerDay, proteinShare float64) error {
	return first(within("feed", "g/d", feedGPerDay, 0, maxGPerDay), checkProtein(proteinShare))
}

func checkProtein(share float64) error { return within("protein", "of the feed", share, 0.2, 0.7) }
