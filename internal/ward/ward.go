// Package ward is the arithmetic of the ward's paper: how much milk a published table
// gives, what a row of weights means, how many hours of skin-to-skin contact a day
// held; and the readers of the two CSV files that such records come in (RFC 4180).
//
// It holds numbers and the tables they were published in, and knows nothing of
// languages, sheets or paper. It decides nothing about a baby: it says what a table
// says, refuses where no table says anything, and compares a record with limits that
// it is given. Weights are whole grams, volumes whole millilitres, and day 1 is the
// day of birth.
package ward
