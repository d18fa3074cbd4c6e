package units

// Apportion divides a mass over shares so that the parts add up to the mass
// to the last nanogram: each part is the total times its share, rounded to the
// nearest nanogram, and the largest share (the first of equals) takes what is
// left over. The shares are of the total and should add up to 1; where they do
// not, the largest share's part makes good the whole difference, and may then be
// below 0 g. A share that is not given counts as zero; without shares there are
// no parts.
func Apportion(total Mass, shares []Ratio) []Mass {
	if len(shares) == 0 {
		return nil
	}
	parts := make([]Mass, len(shares))
	largest, left := 0, total
	for i, share := range shares {
		parts[i] = Sum{}.Plus(total, share).Mass(Nearest)
		left = left.Sub(parts[i])
		if share.Compare(shares[largest]) > 0 {
			largest = i
		}
	}
	parts[largest] = parts[largest].Add(left)
	return parts
}
