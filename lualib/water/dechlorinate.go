package water

import "fmt"

// Agent is a chemical that takes chlorine out of tap water.
type Agent string

// The agents of the trade and of waterworks practice.
const (
	ThiosulfatePentahydrate Agent = "sodium thiosulfate pentahydrate"
	ThiosulfateAnhydrous    Agent = "sodium thiosulfate anhydrous"
	SodiumBisulfite         Agent = "sodium bisulfite"
	SodiumSulfite           Agent = "sodium sulfite"
	SodiumMetabisulfite     Agent = "sodium metabisulfite"
	AscorbicAcid            Agent = "ascorbic acid"
	SodiumAscorbate         Agent = "sodium ascorbate"
)

// Reaction is one way in which an agent takes up chlorine.
type Reaction struct {
	Agent     Agent
	Products  string  // the reaction in short
	MgPerMgCl float64 // mg of agent per mg of chlorine, counted as Cl2
}

// Molar masses of the agents in g/mol, rounded as handbooks print them (from
// memory); the check values were computed with these.
const (
	massNa2S2O3     = 158.11
	massNa2S2O3Aq   = 248.18 // pentahydrate
	massNaHSO3      = 104.06
	massNa2SO3      = 126.04
	massNa2S2O5     = 190.11
	massAscorbic    = 176.12
	massNaAscorbate = 198.11
)

// reactions lists each agent's reactions, the least first within an agent.
// Thiosulfate reacts in three ways, by pH and excess.
var reactions = []Reaction{
	{ThiosulfatePentahydrate, "with 4 Cl2 to sulfate", massNa2S2O3Aq / massCl2 / 4},
	{ThiosulfatePentahydrate, "with Cl2 to sulfate and sulfur", massNa2S2O3Aq / massCl2},
	{ThiosulfatePentahydrate, "2 with Cl2 to tetrathionate", 2 * massNa2S2O3Aq / massCl2},
	{ThiosulfateAnhydrous, "with 4 Cl2 to sulfate", massNa2S2O3 / massCl2 / 4},
	{ThiosulfateAnhydrous, "with Cl2 to sulfate and sulfur", massNa2S2O3 / massCl2},
	{ThiosulfateAnhydrous, "2 with Cl2 to tetrathionate", 2 * massNa2S2O3 / massCl2},
	{SodiumBisulfite, "with Cl2 to sulfate", massNaHSO3 / massCl2},
	{SodiumSulfite, "with Cl2 to sulfate", massNa2SO3 / massCl2},
	{SodiumMetabisulfite, "with 2 Cl2 to sulfate", massNa2S2O5 / massCl2 / 2},
	{AscorbicAcid, "with Cl2 to dehydroascorbic acid", massAscorbic / massCl2},
	{SodiumAscorbate, "with Cl2 to dehydroascorbic acid", massNaAscorbate / massCl2},
}

// Reactions gives the reactions of an agent, the least use first.
func Reactions(agent Agent) ([]Reaction, error) {
	var found []Reaction
	for _, r := range reactions {
		if r.Agent == agent {
			found = append(found, r)
		}
	}
	if found == nil {
		return nil, fmt.Errorf("agent: got %q, want %s, %s, %s, %s, %s, %s or %s", string(agent),
			ThiosulfatePentahydrate, ThiosulfateAnhydrous, SodiumBisulfite, SodiumSulfite,
			SodiumMetabisulfite, AscorbicAcid, SodiumAscorbate)
	}
	return found, nil
}

// Dechlorination is the agent for a volume of tap water and what it leaves.
type Dechlorination struct {
	// LowG and HighG span what may be needed; equal where one reaction is known.
	LowG, HighG float64
	// AmmoniaMgNPerL is the total ammonia, as N, that chloramine leaves: the
	// agent does not take it away.
	AmmoniaMgNPerL float64
	AmmoniaMgN     float64 // the same in all the water
}

// Dechlorinate gives the pure agent that takes chlorine or chloramine out of
// water. Thiosulfate spans the reactions to sulfur and to tetrathionate; the
// high end is what aquarium practice doses.
//
// Units: net litres, chlorine and chloramine in mg/L, both counted as Cl2; g
// of pure agent, mg as N.
// Valid range: above 0 to 10,000,000 L; 0 to 10 mg/L each.
// Accuracy: stoichiometry is exact; waterworks add 10 % (seen), aquarium
// practice 1.5 to 2 times 3.5 mg per mg of thiosulfate (recalled).
// Source: reaction stoichiometry; monochloramine carries 0.19754 mg N per mg
// counted as Cl2.
func Dechlorinate(agent Agent, waterL, chlorineMgPerL, chloramineMgPerL float64) (Dechlorination, error) {
	err := first(
		positive("water", "L", waterL, maxL),
		within("chlorine", "mg/L", chlorineMgPerL, 0, 10),
		within("chloramine", "mg/L", chloramineMgPerL, 0, 10))
	if err != nil {
		return Dechlorination{}, err
	}
	ways, err := Reactions(agent)
	if err != nil {
		return Dechlorination{}, err
	}
	if len(ways) > 1 {
		ways = ways[1:] // complete oxidation to sulfate is not to be relied on
	}
	grams := waterL * (chlorineMgPerL + chloramineMgPerL) / 1000
	left := chloramineMgPerL * MassN / massCl2
	return Dechlorination{
		LowG:           grams * ways[0].MgPerMgCl,
		HighG:          grams * ways[len(ways)-1].MgPerMgCl,
		AmmoniaMgNPerL: left,
		AmmoniaMgN:     left * waterL,
	}, nil
}
