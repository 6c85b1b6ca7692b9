package tables

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
)

// editionLen is how much of the hash people are shown: enough to tell editions apart.
const editionLen = 8

// edition returns a short hash of the texts of all tables in use. It is printed
// beside every result, so that a price can be traced to the figures behind it.
func (f *Files) edition() (string, error) {
	hash := sha256.New()
	for _, name := range Names() {
		text, _, err := f.Bytes(name)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(hash, "%s %d\n", name, len(text))
		hash.Write(text)
	}
	return hex.EncodeToString(hash.Sum(nil))[:editionLen], nil
}
