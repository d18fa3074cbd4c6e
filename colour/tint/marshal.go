package tint

import "errors"

var errCalibration = errors.New("tint: a Calibration is not written: keep its swatches, and call Calibrate")

// MarshalJSON refuses: a calibration is worked out anew from its [Swatches].
func (c Calibration) MarshalJSON() ([]byte, error) { return nil, errCalibration }

// GobEncode refuses, as MarshalJSON does.
func (c Calibration) GobEncode() ([]byte, error) { return nil, errCalibration }
