package units

import (
	"math/big"
	"math/bits"
	"strings"

	"github.com/shopspring/decimal"
)

// The longest number that is read. Twenty-eight digits are what a decimal
// type prints by default in many languages, seventeen what a float64 prints.
const (
	mostInteger  = 16
	mostDecimals = 34
	mostText     = 80
)

// A number is the digits of a quantity before its unit is applied. Up to
// eighteen digits stand in coefficient; more go through text.
type number struct {
	text        string // the digits and the point alone
	coefficient uint64
	decimals    int
	short       bool // the coefficient holds the number
}

// split cuts a quantity into its number and its unit. Nothing is converted
// before its length is known: a text of a million digits costs nothing.
func split(text string) (number, string, *ParseError) {
	fail := func(kind error, reason, remedy string) (number, string, *ParseError) {
		return number{}, "", &ParseError{Text: text, Reason: reason, Remedy: remedy, Kind: kind}
	}
	const plainly = `write digits, and a point if need be, such as "12.5"`
	if len(text) > mostText {
		return fail(ErrSize, "is too long for a quantity", "write at most 16 digits before the point and 34 after it")
	}
	if text == "" {
		return fail(ErrSyntax, "is empty", `write a number and its unit, such as "12.5 g"`)
	}
	if text[0] == '-' {
		return fail(ErrSize, "is negative", "write a quantity above zero")
	}
	if strings.ContainsAny(text, "\u00a0\u202f\u2007") {
		return fail(ErrUnit, "has a no-break space, which looks like a space and is none",
			"put one plain space between number and unit, or none")
	}
	if last := text[len(text)-1]; last == ' ' || last == '\t' {
		return fail(ErrSyntax, "ends with a space", "leave the space out")
	}
	if text[0] == '+' {
		return fail(ErrSyntax, "begins with a plus", "leave the plus out")
	}
	digits, point := 0, -1
	for digits < len(text) {
		c := text[digits]
		if c == '.' && point < 0 {
			point = digits
		} else if c < '0' || c > '9' {
			break
		}
		digits++
	}
	whole := digits
	n := number{text: text[:digits]}
	if point >= 0 {
		whole = point
		n.decimals = digits - point - 1
	}
	switch {
	case digits == 0 && (text[0] == ' ' || text[0] == '\t'):
		return fail(ErrSyntax, "begins with a space", "write the number first")
	case digits == 0:
		return fail(ErrSyntax, "does not begin with a number", plainly)
	case whole == 0 || point >= 0 && n.decimals == 0:
		return fail(ErrSyntax, "lacks a digit on one side of its point", plainly)
	case whole > mostInteger || n.decimals > mostDecimals:
		return fail(ErrSize, "has too many digits", "write at most 16 digits before the point and 34 after it")
	}
	unit := text[digits:]
	if unit != "" {
		switch c := unit[0]; {
		case c == ',':
			return fail(ErrSyntax, "has a comma in its number", "write a decimal point, and no digit grouping")
		case c == '.':
			return fail(ErrSyntax, "has two points in its number", plainly)
		case (c == 'e' || c == 'E') && len(unit) > 1 && (unit[1] == '+' || unit[1] == '-' || unit[1] >= '0' &&
			unit[1] <= '9'):
			return fail(ErrSyntax, "has an exponent", "write the number out in digits")
		case c == ' ':
			unit = unit[1:]
			if unit == "" || unit[0] == ' ' {
				return fail(ErrSyntax, "has a space too many", "put one space between number and unit, or none")
			}
		}
	}
	n.short = len(n.text) <= 18
	if n.short {
		for i := 0; i < len(n.text); i++ {
			if c := n.text[i]; c != '.' {
				n.coefficient = n.coefficient*10 + uint64(c-'0')
			}
		}
	}
	return n, unit, nil
}

// decimal gives the number exactly. Its digits are checked and bounded by
// split; the decimal library's own reader heeds a package variable.
func (n number) decimal() decimal.Decimal {
	digits := strings.Replace(n.text, ".", "", 1)
	coefficient, ok := new(big.Int).SetString(digits, 10)
	if !ok {
		panic("units: digits already checked do not parse: " + digits)
	}
	return decimal.NewFromBigInt(coefficient, -int32(n.decimals))
}

// times gives the number times a whole factor, rounded to a whole number,
// halves up; ok is false when that passes 2^63 − 1.
func (n number) times(factor int64) (whole int64, ok bool) {
	if n.short {
		hi, lo := bits.Mul64(n.coefficient, uint64(factor))
		return quotient128(hi, lo, pow10[n.decimals], false, Nearest)
	}
	return wholeOf(n.decimal().Mul(decimal.NewFromInt(factor)), Nearest)
}

// exactly gives the number times ten to the power of places when that is a
// whole number of at most 2^63 − 1.
func (n number) exactly(places int) (whole int64, ok bool) {
	shift := places - n.decimals
	if !n.short || shift < 0 || shift > 18 {
		return 0, false
	}
	hi, lo := bits.Mul64(n.coefficient, pow10[shift])
	if hi != 0 || lo > 1<<63-1 {
		return 0, false
	}
	return int64(lo), true
}
