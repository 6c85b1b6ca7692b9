// Package samples holds invented jobs to try the tool on: a steel mezzanine, a
// stainless wash table, an aluminium gangway, a list of mistakes, the smallest
// useful list, and a trestle with its cut list. No real structure, shop or person stands behind any of them, and
// each list says so in its first row.
//
// The lists are read from disk; nothing is embedded. The mezzanine workbook is
// written by its test (go test ./samples -run Make -update), so that every cell
// of it can be reviewed as text.
package samples
