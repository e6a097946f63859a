// Package attacks is tests only: the page as it is served, guard and all, in a real browser, against what pages of
// elsewhere and files of other people may try. What is tried over the wire stands in cmd/serve/guard and cmd/maltwright.
package attacks
