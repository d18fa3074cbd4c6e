package soap

import "example.com/lyewright/units"

func (r *reader) temperatures(s *spot) Temperatures {
	if s == nil || !r.object(s, "oils", "lye", "water", "room", "pour") {
		return Temperatures{}
	}
	return Temperatures{
		Oils: r.temperature(s.at("oils")), Lye: r.temperature(s.at("lye")), Water: r.temperature(s.at("water")),
		Room: r.temperature(s.at("room")), Pour: r.temperature(s.at("pour")),
	}
}

func (r *reader) temperature(s *spot) units.Temperature {
	return measure(r, s, units.ParseTemperature, "40 °C")
}
