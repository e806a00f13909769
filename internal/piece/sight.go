package piece

import (
	"math"

	"wardleaf/internal/font"
	"wardleaf/internal/measure"
	"wardleaf/internal/typeset"
)

// This file sizes letters that are read from afar: by the angle they take up in the
// eye, measured on the outlines of the script's base letters, not by points.

// Visual angles in minutes of arc, of the height of a base letter.
const (
	// readableAngle is the readable limit of the sign trade, 1 inch of letter for 25
	// feet of distance: 3.3 mm a metre (published sign-letter visibility charts).
	readableAngle = 11.5
	// headingAngle is 22 minutes and a fraction: a 155th of the distance, the least
	// height of characters that ISO 9241-303 prefers, as the German workplace rule
	// ASR A6 gives it.
	headingAngle = 22.18
)

// wallDistance is how far off a wall is read when a job does not say.
var wallDistance = measure.MM(2000)

// letterHeight is how tall a letter must be to take up an angle at a distance.
func letterHeight(distance measure.Length, minutes float64) measure.Length {
	return distance.Scale(2 * math.Tan(minutes/60*math.Pi/180/2))
}

// textSize is the nominal size at which base letters of a script take up an angle at
// a distance.
func textSize(fonts *font.Library, script string, distance measure.Length, minutes float64) (measure.Length, error) {
	base, err := fonts.BaseHeight(script)
	if err != nil {
		return 0, err
	}
	return measure.Length(math.Ceil(float64(letterHeight(distance, minutes)) / base)), nil
}

// afarSizes are sizes for text to be read from a distance, headings and all.
func (j *Job) afarSizes(distance measure.Length) (typeset.Sizes, error) {
	text, err := textSize(j.Fonts.Library, j.Locale.Script, distance, readableAngle)
	if err != nil {
		return typeset.Sizes{}, err
	}
	heading, err := textSize(j.Fonts.Library, j.Locale.Script, distance, headingAngle)
	if err != nil {
		return typeset.Sizes{}, err
	}
	z := typeset.Sized(text)
	z.Title, z.Part = heading, heading
	return z, nil
}

func (j *Job) distance() measure.Length {
	if j.Distance > 0 {
		return j.Distance
	}
	return wallDistance
}
