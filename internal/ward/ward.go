// Package ward is the arithmetic of the ward's paper: how much milk a published table
// gives, what a row of weights means, how many hours of skin-to-skin contact a day
// held; and what the two CSV files say that such records come in.
//
// It holds numbers and the tables they were published in, and knows nothing of
// languages, sheets or paper. It decides nothing about a baby: it says what a table
// says, refuses where no table says anything, and compares a record with limits that
// it is given. Weights are whole grams, volumes whole millilitres, and day 1 is the
// day of birth.
package ward

// Limits of a record; a longer one is not that of one baby.
const (
	mostRows = 5000
	mostDays = 400 // from the first date to the last
)

const whyTable = "A row that is not understood would be left out of the sheet, and its sums would be wrong without a word."
