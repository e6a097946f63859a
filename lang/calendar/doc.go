// Package calendar reads dates and times of day as people write them.
//
// Two things are asked of it. A file must mean the same wherever it is read, so a date or
// a time of day of it is read only where it can mean one day and one second of a day:
// 27.01.2026 can, 03/04/2026 cannot, and 7 cannot. What can mean several is given with
// all that it can mean, so that who reads the file can show them.
//
// A command line is typed at some hour by somebody, and may leave more open: fri 18:00,
// tomorrow 7am, 2 h ago. Reader reads these, by the clock, by which way the time is to lie
// and by the order of day and month that the locale has. What it filled in it says.
package calendar
