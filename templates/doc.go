// Package templates holds what the tool hands out for others to fill in or to
// read: starter files and the wording of the printed sheets.
package templates
