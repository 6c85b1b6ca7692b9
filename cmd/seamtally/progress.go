package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"time"
)

// patience is how long a run may be silent before it shows how far it is.
const patience = 300 * time.Millisecond

// progress is one line on a terminal that is rewritten as the lists get done. On
// anything else than a terminal it shows nothing.
type progress struct {
	w     io.Writer
	mu    sync.Mutex
	done  int
	total int
	width int // of the line on the screen; 0: none
	stop  chan struct{}
	ended sync.WaitGroup
}

func startProgress(w io.Writer, total int, quiet bool) *progress {
	p := &progress{w: w, total: total, stop: make(chan struct{})}
	if quiet || !terminal(w) {
		return p
	}
	p.ended.Go(p.run)
	return p
}

func (p *progress) run() {
	wait := time.NewTimer(patience)
	defer wait.Stop()
	for {
		select {
		case <-p.stop:
			return
		case <-wait.C:
			p.draw()
			wait.Reset(patience)
		}
	}
}

func (p *progress) draw() {
	p.mu.Lock()
	defer p.mu.Unlock()
	line := fmt.Sprintf("working, %d of %d lists done", p.done, p.total)
	if p.total == 1 {
		line = "working ..."
	}
	fmt.Fprint(p.w, "\r"+line)
	p.width = len(line)
}

// step counts one list, and takes the line off the screen so that its results
// can be printed.
func (p *progress) step() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.done++
	p.clear()
}

func (p *progress) clear() {
	if p.width > 0 {
		fmt.Fprint(p.w, "\r"+strings.Repeat(" ", p.width)+"\r")
		p.width = 0
	}
}

func (p *progress) end() {
	close(p.stop)
	p.ended.Wait()
	p.mu.Lock()
	defer p.mu.Unlock()
	p.clear()
}

func terminal(w io.Writer) bool {
	file, ok := w.(*os.File)
	if !ok || os.Getenv("TERM") == "dumb" {
		return false
	}
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
