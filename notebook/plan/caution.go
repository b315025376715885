package plan

import "slices"

// Cautions are the short safety lines that a plan calls for, each once: where
// the work can hurt someone, local code and licensed practice decide.
func (p *Plan) Cautions() []string {
	var lines []string
	if len(p.Tanks) > 0 || len(p.Racks) > 0 {
		lines = append(lines, "weights and floor loads here are estimates; what a floor, a rack or a pane bears is for a licensed professional; lift with enough people, and never move a filled tank")
	}
	if len(p.Circuits) > 0 || len(p.Loads) > 0 {
		lines = append(lines, "mains power near water can kill: residual-current protection, drip loops, and a licensed electrician; local code decides")
	}
	if len(p.WaterPlans) > 0 || slices.ContainsFunc(p.Tanks, func(t *Tank) bool { return t.Salinity.Value() > 0 }) {
		lines = append(lines, "salts and water treatments: follow the label, keep them dry and away from children, and never mix products")
	}
	if len(p.Fish) > 0 {
		lines = append(lines, "figures for animals are planning values, never a promise that they are safe; watch them, and ask a vet where they ail")
	}
	return lines
}
