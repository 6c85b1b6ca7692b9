//go:build !race

package bars

const raced = false
