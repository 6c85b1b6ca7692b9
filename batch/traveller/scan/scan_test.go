package scan

import (
	"strings"
	"testing"

	"github.com/boombuler/barcode/qr"
)

// Another encoder's code of the same text is the same to the last module, up to the
// longest text.
func TestAnotherEncoderAgrees(t *testing.T) {
	same := 0
	for n := 1; n < 214; n++ {
		text := strings.Repeat("3fa9c1d20b/17/W-00~", 20)[:n]
		c, ok := Of(text)
		if !ok {
			t.Fatalf("%d bytes do not fit", n)
		}
		other, err := qr.Encode(text, qr.M, qr.Unicode)
		if err != nil {
			t.Fatal(err)
		}
		if other.Bounds().Dx() != c.Side {
			t.Fatalf("%d bytes: %d modules, another has %d", n, c.Side, other.Bounds().Dx())
		}
		equal := true
		for y := range c.Side {
			for x := range c.Side {
				v, _, _, _ := other.At(x, y).RGBA()
				equal = equal && v < 0x8000 == c.Dark(x, y)
			}
		}
		if equal {
			same++
		}
	}
	if same != 213 {
		t.Errorf("only %d of 213 codes are the same", same)
	}
}

func TestTooLongIsRefused(t *testing.T) {
	if _, ok := Of(strings.Repeat("x", 214)); ok {
		t.Error("214 bytes fit where 213 are the most")
	}
}
