package water

import "math"

// PureViscosityMPaS gives the dynamic viscosity of pure water at one
// atmosphere.
//
// Units: degrees Celsius (ITS-90); mPa s.
// Valid range: 0 to 40 °C.
// Accuracy: 0.0012 mPa s of printed tables; the release claims 1 % and less
// at one atmosphere (from memory).
// Source: IAPWS R12-08, equations 10 to 12 without the critical enhancement
// (constants from memory; the check value of table 4 is reproduced), with the
// density of PureDensityKgPerM3.
func PureViscosityMPaS(temperatureC float64) (float64, error) {
	if err := within("temperature", "degC", temperatureC, 0, 40); err != nil {
		return 0, err
	}
	density, err := PureDensityKgPerM3(temperatureC)
	if err != nil {
		return 0, err
	}
	return iapwsViscosity(density, temperatureC+kelvinAt0C), nil
}

// iapwsViscosity is the release's viscosity in mPa s from density and kelvin.
func iapwsViscosity(density, kelvin float64) float64 {
	t, d := kelvin/647.096, density/322.0
	dilute := 100 * math.Sqrt(t) / poly(1/t, 1.67752, 2.20462, 0.6366564, -0.241605)
	sum := 0.0
	for i, row := range viscosityH {
		sum += math.Pow(1/t-1, float64(i)) * poly(d-1, row[:]...)
	}
	return dilute * math.Exp(d*sum) / 1000
}

// viscosityH holds the coefficients of table 2: powers of 1/t - 1 down, of
// d - 1 across.
var viscosityH = [6][7]float64{
	{0.520094, 0.222531, -0.281378, 0.161913, -0.0325372, 0, 0},
	{0.0850895, 0.999115, -0.906851, 0.257399, 0, 0, 0},
	{-1.08374, 1.88797, -0.772479, 0, 0, 0, 0},
	{-0.289555, 1.26613, -0.489837, 0, 0.0698452, 0, -0.00435673},
	{0, 0, -0.257040, 0, 0, 0.00872102, 0},
	{0, 0.120573, 0, 0, 0, 0, -0.000593264},
}
