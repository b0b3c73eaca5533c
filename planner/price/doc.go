// Package price turns the quantities of a plan and a file of the user's own
// rates into a bill.
//
// # Money
//
// Money is whole minor units of one currency (cents, say) in an int64, from the
// file to the writers; nothing is ever a float. The currency, its symbol and its
// digits after the point come from the rates file.
//
// A quantity is rounded to hundredths first, as it is printed, halves away from
// zero. A line's amount is quantity x rate, rounded once to a whole minor unit,
// halves away from zero; so is the mark-up. Everything else is adding up. Sums
// and products that leave an int64 are errors.
//
// # What isn't known isn't 0
//
// Every rate may be left out. A quantity without its rate is listed as not
// priced. Retests, waiting, abortive visits and overtime have a quantity only
// where the file gives an allowance; else their rates are quoted beside the bill,
// for what is charged as it comes.
package price
