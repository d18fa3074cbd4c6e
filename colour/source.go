package colour

import (
	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units/cite"
)

// DensitySource is where the density stands, or that it was recalled.
func (c Colourant) DensitySource() cite.Source {
	how := cite.ParseHow(refdata.Field(c.row, 5))
	switch refdata.Field(c.row, 6) {
	case "crc":
		return cite.Source{
			Title: "Table of inorganic constants, CRC type", Edition: "edition not stated",
			Place: "density, as an open data set holds it", How: how,
		}
	case "gettens":
		return cite.Source{Title: "Gettens, Stout, Painting Materials", Edition: "1942", Place: "table of physical properties of pigments", How: how}
	case "handbooks":
		return cite.Source{Title: "handbooks of minerals and pigments", Edition: "edition not stated", How: how}
	default:
		return cite.Source{}
	}
}
