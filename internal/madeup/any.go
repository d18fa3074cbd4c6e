package madeup

import "example.com/lyewright/soap"

// Any is a formula of any of the scopes, at times with what was really weighed: two to
// eight percent off, for a stage of the work.
func (m *Maker) Any() soap.Formula {
	var f soap.Formula
	switch m.IntN(6) {
	case 0:
		f = m.Formula()
	case 1:
		f = m.Benched()
	case 2:
		f = m.Shelved()
	case 3:
		f = m.Scented()
	default:
		f = m.Coloured()
	}
	if m.IntN(5) == 0 {
		if b, err := f.Batch(); err == nil {
			stages := Stages()
			f.Weighed = m.Weigh(b, stages[m.IntN(len(stages))], m.Between(2, 8))
		}
	}
	return f
}
