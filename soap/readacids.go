package soap

import "example.com/lyewright/soap/lye"

func (r *reader) acids(s *spot) []AcidLine {
	if s == nil || !r.list(s, mostLines, "acids") {
		return nil
	}
	var lines []AcidLine
	for i := range s.node.Items {
		lines = append(lines, r.acid(s.item(i)))
	}
	return lines
}

func (r *reader) acid(s *spot) AcidLine {
	var line AcidLine
	if !r.object(s, "acid", "load", "strength", "compensate") {
		return line
	}
	if id := s.at("acid"); r.label(id) != "" {
		var err error
		line.Acid, err = lye.LookUpAcid(id.node.Text)
		if r.under(id, err, "acid"); err == nil && line.Acid.ID != id.node.Text {
			line.Asked = id.node.Text
		}
	}
	line.Load = r.load(s.at("load"))
	line.Strength = r.percentRange(s.at("strength"), "80 %")
	switch r.yes(s.at("compensate"), "write true to add the alkali that the acid takes up") {
	case affirmed:
		line.Compensate = Compensated
	case denied:
		line.Compensate = Uncompensated
	}
	return line
}
