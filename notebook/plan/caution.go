package plan

// Cautions are the short safety lines that a plan calls for, each once: where
// the work can hurt someone, local code and licensed practice decide.
func (p *Plan) Cautions() []string {
	var lines []string
	if len(p.Tanks) > 0 || len(p.Racks) > 0 {
		lines = append(lines, "weights and floor loads here are estimates; what a floor, a rack or a pane bears is for a licensed professional, and a filled tank is never moved")
	}
	if len(p.Circuits) > 0 || len(p.Loads) > 0 {
		lines = append(lines, "mains power near water can kill: residual-current protection, drip loops, and a licensed electrician; local code decides")
	}
	if len(p.Fish) > 0 {
		lines = append(lines, "figures for animals are planning values, never a promise that they are safe; watch them, and ask a vet where they ail")
	}
	return lines
}
