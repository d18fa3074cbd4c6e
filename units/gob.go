package units

// encoding/gob asks for methods of its own and takes no text without them: a quantity goes
// through it as the text of MarshalText, and what that refuses, these refuse.

// GobEncode writes what MarshalText does.
func (m Mass) GobEncode() ([]byte, error) { return m.MarshalText() }

// GobDecode reads what GobEncode wrote, as UnmarshalText does.
func (m *Mass) GobDecode(text []byte) error { return m.UnmarshalText(text) }

// GobEncode writes what MarshalText does.
func (v Volume) GobEncode() ([]byte, error) { return v.MarshalText() }

// GobDecode reads what GobEncode wrote, as UnmarshalText does.
func (v *Volume) GobDecode(text []byte) error { return v.UnmarshalText(text) }

// GobEncode writes what MarshalText does.
func (l Length) GobEncode() ([]byte, error) { return l.MarshalText() }

// GobDecode reads what GobEncode wrote, as UnmarshalText does.
func (l *Length) GobDecode(text []byte) error { return l.UnmarshalText(text) }

// GobEncode writes what MarshalText does.
func (a Area) GobEncode() ([]byte, error) { return a.MarshalText() }

// GobDecode reads what GobEncode wrote, as UnmarshalText does.
func (a *Area) GobDecode(text []byte) error { return a.UnmarshalText(text) }

// GobEncode writes what MarshalText does.
func (d Density) GobEncode() ([]byte, error) { return d.MarshalText() }

// GobDecode reads what GobEncode wrote, as UnmarshalText does.
func (d *Density) GobDecode(text []byte) error { return d.UnmarshalText(text) }

// GobEncode writes what MarshalText does.
func (t Temperature) GobEncode() ([]byte, error) { return t.MarshalText() }

// GobDecode reads what GobEncode wrote, as UnmarshalText does.
func (t *Temperature) GobDecode(text []byte) error { return t.UnmarshalText(text) }

// GobEncode writes what MarshalText does.
func (d TemperatureDifference) GobEncode() ([]byte, error) { return d.MarshalText() }

// GobDecode reads what GobEncode wrote, as UnmarshalText does.
func (d *TemperatureDifference) GobDecode(text []byte) error { return d.UnmarshalText(text) }

// GobEncode writes what MarshalText does.
func (r Ratio) GobEncode() ([]byte, error) { return r.MarshalText() }

// GobDecode reads what GobEncode wrote, as UnmarshalText does.
func (r *Ratio) GobDecode(text []byte) error { return r.UnmarshalText(text) }

// GobEncode writes what MarshalText does.
func (s Sum) GobEncode() ([]byte, error) { return s.MarshalText() }

// GobDecode reads what GobEncode wrote, as UnmarshalText does.
func (s *Sum) GobDecode(text []byte) error { return s.UnmarshalText(text) }

// GobEncode writes what MarshalText does.
func (r Range) GobEncode() ([]byte, error) { return r.MarshalText() }

// GobDecode reads what GobEncode wrote, as UnmarshalText does.
func (r *Range) GobDecode(text []byte) error { return r.UnmarshalText(text) }
