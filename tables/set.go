package tables

// Set is every table, loaded and checked.
type Set struct {
	Edition string // short hash of all table texts in use
	Headers []Header
	// PartHeaders are the headers of cut lists.
	PartHeaders []Header
	Words       []Word
	// HeaderWords and HeaderRules read headers that no table has as a whole.
	HeaderWords []HeaderWord
	HeaderRules []HeaderRule
	Facts
	Settings
	Shop []ShopValue
}

// Load reads all tables.
func Load(f *Files) (*Set, error) {
	var set Set
	var err error
	if set.Headers, err = Rows[Header](f, "headers"); err != nil {
		return nil, err
	}
	if set.PartHeaders, err = Rows[Header](f, "part_headers"); err != nil {
		return nil, err
	}
	if set.Words, err = Rows[Word](f, "words"); err != nil {
		return nil, err
	}
	if set.HeaderWords, err = Rows[HeaderWord](f, "header_words"); err != nil {
		return nil, err
	}
	if set.HeaderRules, err = Rows[HeaderRule](f, "header_rules"); err != nil {
		return nil, err
	}
	if set.Shop, err = Rows[ShopValue](f, "shop"); err != nil {
		return nil, err
	}
	if set.Facts, err = loadFacts(f); err != nil {
		return nil, err
	}
	if set.Settings, err = loadSettings(f); err != nil {
		return nil, err
	}
	set.Edition, err = f.edition()
	return &set, err
}
