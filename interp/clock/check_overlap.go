package clock

// Called names a pull by what is written, whatever the focus is on before.
func (p *Pull) Called() string {
	if p.Follow {
		return "the follow of " + p.ToText()
	}
	return "the rack to " + p.ToText()
}
