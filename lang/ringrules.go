// The rules of `ring` that its tags cannot say.

package lang

// ringRules returns the mistake of a ring that says nothing, that has parts which its
// kind has no use for, or that is linear and not by wire.
func (p *parser) ringRules(r *Ring, s *spec, at, end int) *mistake {
	behind := &p.tokens[end]
	if end == at+1 {
		f := faultAt(behind, "expected-value", "expected %s, or %s, found %s", quantityNamed("angle").text,
			choice([]string{"by", "none", "diameter", "girth"}), describe(behind))
		return &mistake{fault: f, token: end, clause: -1}
	}
	onClause := func(x *Expr, message string) *mistake {
		m := p.onNode(s, &x.Node, at, end, "", "")
		m.token = m.clause
		m.fault = faultAt(&p.tokens[m.token], "conflicting-clauses", "%s", message).offers(withoutClause(&p.tokens[m.token]))
		return m
	}
	switch {
	case r.Linear != nil && r.Kind != "wire":
		return onClause(r.Linear, "only a ring by wire is `linear over` an angle")
	case r.Kind != "none":
		return nil
	}
	for _, x := range []*Expr{r.Diameter, r.Girth} {
		if x != nil {
			return onClause(x, "a lens without a ring has nothing to measure")
		}
	}
	return nil
}
