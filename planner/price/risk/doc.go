// Package risk says what a job may come to, in money and in days, where sections
// fail and have to be tested again.
//
// # The model
//
// The leak of a section over its limit is log-normal,
//
//	ln r = ln(median) + J + S,   J ~ N(0, share s^2),  S ~ N(0, (1 - share) s^2)
//
// with s the logarithm of the spread (geometric standard deviation), J one draw
// for the whole job, because one gang with one kind of gasket made it, and S one
// for each section. Nothing is truncated. A section fails where r > 1; where r is
// over the headroom the rig can't hold the pressure either.
//
// A failed section takes the crew some search on the day, is resealed by others,
// cures, and is tested again. That is within the same visit if it has a day left
// by then, else at the next visit that is planned, else at a visit more, at which
// everything that waits is tested. A retest passes with a chance of its own
// (retest_pass), or by a new draw around another median with the same J
// (retest_median). What fails retests_most times is handed back and counted as
// not settled. Minutes that come on top fill what the days of a visit have left,
// then further days. A visit may be abortive; it is then made again. Waiting is
// exponential, for every visit.
//
// A sample that fails is widened as package sampling has it: by one more share,
// then by everything. The further sections are tested at a visit of their own.
//
// # What is exact and what is drawn
//
// The number of sections that fail first and the number of retests expected are
// exact: given J the sections are independent, and J is summed out. Money and
// days are simulated (PCG-DXSM, one stream a run, started with the seed and the
// run's number), because return visits and days left don't add up by section. The
// interval of a quantile is that of its order statistics, 95 %.
package risk
