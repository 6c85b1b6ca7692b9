package batch

import (
	"testing"
	"time"
)

// What does not come back in time is told by its name; what does, never.
func TestWatch(t *testing.T) {
	told := make(chan string, 2)
	j := Job{Stuck: func(list string) { told <- list }}
	j.watch("quick.xlsx", time.Hour)()
	end := j.watch("slow.xlsx", time.Millisecond)
	if got := <-told; got != "slow.xlsx" {
		t.Errorf("told of %q", got)
	}
	end()
	if len(told) != 0 {
		t.Errorf("told of %q", <-told)
	}
	(&Job{}).watch("nobody asks.xlsx", 0)()
}
