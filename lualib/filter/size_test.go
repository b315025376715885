package filter

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// By hand: 1 g/d over 0.8 and 0.3 g/(m2 d), over 800 and 500 m2/m3.
func TestMediaForMovingBed(t *testing.T) {
	got, err := MediaFor(medium(t, "moving-bed"), 1, Conditions{TemperatureC: 25, TANMgPerL: 0.5})
	require.NoError(t, err)
	require.InDelta(t, 1/0.8, got.AreaM2.Low, 1e-12)
	require.InDelta(t, 1/0.3, got.AreaM2.High, 1e-12)
	require.InDelta(t, 1000/0.8/800, got.VolumeL.Low, 1e-9)
	require.InDelta(t, 1000/0.3/500, got.VolumeL.High, 1e-9)
	require.Zero(t, got.MassKg)
}

// What the media for a load carries is that load: the most media at its worst
// rate, and the least at its best.
func TestSizeAndCapacityAgree(t *testing.T) {
	for _, m := range AllMedia() {
		at := Conditions{TemperatureC: 25, TANMgPerL: 0.15, SurfaceM2PerM3: 600}
		tan, err := TANGPerDay(30, 0.45)
		require.NoError(t, err)
		size, err := MediaFor(m, tan, at)
		require.NoError(t, err)
		need := size.VolumeL
		if m.Basis == PerKg {
			need = size.MassKg
		}
		most, err := FeedFor(m, need.High, 0.45, at)
		require.NoError(t, err)
		require.InEpsilon(t, 30, most.FeedGPerDay.Low, 1e-12, m.ID)
		require.InEpsilon(t, tan, most.TANGPerDay.Low, 1e-12, m.ID)
		least, err := FeedFor(m, need.Low, 0.45, at)
		require.NoError(t, err)
		require.InEpsilon(t, 30, least.FeedGPerDay.High, 1e-12, m.ID)
	}
}

func TestSizeRefusals(t *testing.T) {
	at := Conditions{TemperatureC: 25, TANMgPerL: 0.1}
	sponge := medium(t, "sponge")
	const none = "specific surface: got none, want the m2/m3 of the media as sold; aquarium sponge/foam, canister media differs too much for a default"
	_, err := MediaFor(sponge, 1, at)
	require.EqualError(t, err, none)
	_, err = FeedFor(sponge, 5, 0.4, at)
	require.EqualError(t, err, none)
	_, err = MediaFor(sponge, 0, at)
	require.EqualError(t, err, "TAN: got 0 g/d, want more than 0 and at most 100000 g/d")
	_, err = FeedFor(sponge, 0, 0.4, at)
	require.EqualError(t, err, "media: got 0 L, want more than 0 and at most 1e+07 L")
	_, err = FeedFor(medium(t, "live-rock"), 0, 0.4, at)
	require.EqualError(t, err, "media: got 0 kg, want more than 0 and at most 1e+07 kg")
	_, err = FeedFor(sponge, 5, 0, at)
	require.ErrorContains(t, err, "protein: got 0 of the feed")
	at.SurfaceM2PerM3 = 5
	_, err = MediaFor(sponge, 1, at)
	require.EqualError(t, err, "specific surface: got 5 m2/m3, want 10 to 50000 m2/m3")
	at.TemperatureC = 50
	_, err = MediaFor(sponge, 1, at)
	require.ErrorContains(t, err, "temperature: got 50 degC")
	_, err = FeedFor(sponge, 5, 0.4, at)
	require.ErrorContains(t, err, "temperature: got 50 degC")
}

func TestTurnover(t *testing.T) {
	turnover, err := TurnoverPerH(1200, 400)
	require.NoError(t, err)
	require.InDelta(t, 3, turnover, 1e-12)
	flow, err := FlowLPerH(turnover, 400)
	require.NoError(t, err)
	require.InDelta(t, 1200, flow, 1e-9)
	_, err = TurnoverPerH(-1, 400)
	require.EqualError(t, err, "flow: got -1 L/h, want 0 to 1e+07 L/h")
	_, err = FlowLPerH(200, 400)
	require.EqualError(t, err, "turnover: got 200 per hour, want 0 to 100 per hour")
}
