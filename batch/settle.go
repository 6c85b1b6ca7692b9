package batch

import (
	"context"

	"seamtally/batch/price"
	"seamtally/batch/report"
	"seamtally/batch/settle"
)

// Settlement is what became of settling a list: planned against actual.
type Settlement struct {
	Job      *price.Job
	Settled  settle.Settled
	Document []byte // the result document
	ShopFile []byte // the shop's values with those that were fitted
	Code     int    // exit code
}

// Settle works the job's one list and compares it with what the floor wrote into
// its columns. It writes nothing.
func Settle(ctx context.Context, job Job) (s Settlement, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = &Bug{List: job.Lists[0], Fault: fault}
		}
	}()
	t, err := job.tools()
	if err != nil {
		return s, err
	}
	if _, s.Job, err = job.work(ctx, t, job.Lists[0]); err != nil {
		return s, err
	}
	shop := &s.Job.Shop
	s.Settled = settle.Of(s.Job.Plans, s.Job.Floor, settle.Shop{
		OperatingFactor: shop.OperatingFactor, Overweld: float64(shop.Overweld), Convexity: shop.Convexity,
		WastePct: shop.WastePct, ReworkPct: shop.ReworkPct,
	})
	s.Code = rowsCode(s.Job, job.Strict)
	if s.Document, err = report.SettleJSON(s.Job, &s.Settled); err != nil {
		return s, &Bug{List: job.Lists[0], Fault: err}
	}
	s.ShopFile, err = report.SettledShop(s.Job, &s.Settled)
	return s, err
}
