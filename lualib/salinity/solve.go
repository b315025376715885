package salinity

// solve finds where a function that rises from low to high reaches want, by
// halving the bracket until it is as narrow as numbers allow. What lies
// outside the function's values gives the nearer end.
func solve(f func(float64) float64, want, low, high float64) float64 {
	if f(low) >= want {
		return low
	}
	if f(high) <= want {
		return high
	}
	const halvings = 100 // 42/2^100 is far below the spacing of numbers near any answer but 0
	for range halvings {
		middle := low + (high-low)/2
		if middle == low || middle == high {
			break
		}
		if f(middle) < want {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}
