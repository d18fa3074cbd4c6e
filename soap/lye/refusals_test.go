package lye_test

import (
	"errors"
	"reflect"
	"testing"

	"example.com/lyewright/units/fault"
)

// refused checks that nothing stands beside an error, and that one of its faults
// has this path and this kind.
func refused(t *testing.T, got any, err error, path string, kind error) {
	t.Helper()
	var faults fault.Faults
	if !errors.As(err, &faults) {
		t.Errorf("%s: %v is not fault.Faults", path, err)
		return
	}
	if !reflect.ValueOf(got).IsZero() {
		t.Errorf("%s: %v stands beside the error", path, got)
	}
	for _, f := range faults {
		if f.Path == path && errors.Is(f, kind) {
			return
		}
	}
	t.Errorf("want a fault of %q that is %v, got %v", path, kind, err)
}
