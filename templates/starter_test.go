package templates

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

func TestJointListSameBytes(t *testing.T) {
	for _, us := range []bool{false, true} {
		first, err := JointList(us, "2026-11-25")
		if err != nil {
			t.Fatal(err)
		}
		for range 3 {
			again, err := JointList(us, "2026-11-25")
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(first, again) {
				t.Fatalf("us=%v: the same arguments gave different bytes", us)
			}
		}
		if dir := os.Getenv("SEAMTALLY_LOOK"); dir != "" {
			name := map[bool]string{false: "starter.xlsx", true: "starter-us.xlsx"}[us]
			if err := os.WriteFile(filepath.Join(dir, name), first, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

func TestJointListRefusesADateThatIsNone(t *testing.T) {
	if _, err := JointList(false, "25.11.2026"); err == nil {
		t.Error("25.11.2026 was taken as YYYY-MM-DD")
	}
	if _, err := JointList(false, ""); err != nil {
		t.Errorf("no date: %v", err)
	}
}
