package plan

import (
	"fmt"
	"math/rand"
	"strconv"
	"syscall"
	"testing"
	"time"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// manyJoints returns distinct joints of the usual kinds from a fixed seed.
func manyJoints(n int) []joint.Joint {
	r := rand.New(rand.NewSource(1))
	kinds := []joint.Kind{joint.Fillet, joint.Fillet, joint.Fillet, joint.Lap, joint.Corner, joint.SquareButt, joint.SingleV, joint.SingleBevel, joint.DoubleV}
	materials := []string{"S235", "S355", "304L", "5083"}
	out := make([]joint.Joint, n)
	for i := range out {
		j := buttJoint(kinds[r.Intn(len(kinds))], 2+18*r.Float64(), positions[r.Intn(len(positions))])
		j.Mark = fmt.Sprintf("J%d", i)
		j.Length, j.Qty, j.Material = units.MM(50+5000*r.Float64()), 1+r.Intn(20), materials[r.Intn(len(materials))]
		if j.Kind == joint.Fillet || j.Kind == joint.Lap {
			j.Size = joint.Size{Means: joint.Leg, A: units.MM(2 + 8*r.Float64())}
		}
		out[i] = j
	}
	return out
}

// BenchmarkJoints plans lists of a thousand, and of ten thousand, distinct joints; the
// tables are compiled anew for each list.
func BenchmarkJoints(b *testing.B) {
	for _, n := range []int{1_000, 10_000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			set, shop := world(b)
			joints := manyJoints(n)
			b.ReportAllocs()
			started := processorTime(b)
			for b.Loop() {
				Joints(joints, set, shop, Options{})
			}
			b.ReportMetric(float64(b.N*n)/b.Elapsed().Seconds(), "joints/s")
			b.ReportMetric(float64(b.N*n)/(processorTime(b)-started).Seconds(), "joints/cpu-s")
		})
	}
}

// processorTime returns what the process has taken of the processors so far: on a machine
// that others use it says more than the clock.
func processorTime(b *testing.B) time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		b.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// BenchmarkOne plans a list of one joint: mostly the compiling of the tables.
func BenchmarkOne(b *testing.B) {
	set, shop := world(b)
	joints := manyJoints(1)
	for b.Loop() {
		Joints(joints, set, shop, Options{})
	}
}
