package soap

func (r *reader) water(s *spot) Water {
	if s == nil || !r.object(s, "lye_concentration", "per_alkali", "per_oils", "liquids") {
		return Water{}
	}
	w := Water{
		LyeConcentration: r.concentration(s.at("lye_concentration")),
		PerAlkali:        r.number(s.at("per_alkali")),
		PerOils:          r.percent(s.at("per_oils")),
	}
	if list := s.at("liquids"); list != nil && r.list(list, mostLines, "liquids") {
		for i := range list.node.Items {
			w.Liquids = append(w.Liquids, r.liquid(list.item(i)))
		}
	}
	return w
}

func (r *reader) liquid(s *spot) LiquidLine {
	if !r.object(s, "liquid", "share", "mass", "water", "fat", "sugar", "alcohol", "saponification") {
		return LiquidLine{}
	}
	return LiquidLine{
		Name:  r.label(s.at("liquid")),
		Share: r.percent(s.at("share")), Mass: r.mass(s.at("mass")),
		Water: r.percent(s.at("water")), Fat: r.percent(s.at("fat")),
		Sugar: r.percent(s.at("sugar")), Alcohol: r.percent(s.at("alcohol")),
		Saponification: r.saponification(s.at("saponification")),
	}
}
