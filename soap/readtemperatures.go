package soap

import (
	"example.com/lyewright/internal/strictjson"
	"example.com/lyewright/units"
)

func (r *reader) temperatures(s *spot) Temperatures {
	if s == nil || !r.object(s, "temperature", "oils", "lye", "water", "room", "pour") {
		return Temperatures{}
	}
	return Temperatures{
		Oils: r.temperature(s.at("oils")), Lye: r.temperature(s.at("lye")), Water: r.temperature(s.at("water")),
		Room: r.temperature(s.at("room")), Pour: r.temperature(s.at("pour")),
	}
}

func (r *reader) temperature(s *spot) units.Temperature {
	if s == nil {
		return units.Temperature{}
	}
	text := r.text(s, "40 °C")
	if !s.is(strictjson.String) {
		return units.Temperature{}
	}
	t, err := units.ParseTemperature(text)
	if err != nil {
		r.parseFault(s, err)
	}
	return t
}
