package plaintext

import "testing"

// Columns are parted by spaces only where every line has as many of them.
func TestSpaced(t *testing.T) {
	for _, tt := range []struct {
		in, want string
		spaced   bool
	}{
		{"Tag   Kind   Length\n1   round duct   500\n", "Tag\tKind\tLength\n1\tround duct\t500\n", true},
		{"List\n\n  Tag   Kind   Length\r\n  1     duct   500", "List\n\nTag\tKind\tLength\n1\tduct\t500", true},
		{"Tag   Kind   Length\n1   duct\n", "", false},
		{"Tag   Kind   Length\n", "", false},
		{"Tag   Kind\n1   duct\n", "", false},
		{"Tag,  Kind,  Length\n1,  duct,  500\n", "", false},
		{"Tag;Kind;Length\n1;duct  x;500\n", "", false},
		{"1   duct   500\n2   duct   500\n", "", false},
		{"Tag Kind Length\n1 duct 500\n", "", false},
		{"", "", false},
	} {
		out, spaced := Spaced([]byte(tt.in))
		if !spaced && tt.want == "" {
			tt.want = tt.in
		}
		if spaced != tt.spaced || string(out) != tt.want {
			t.Errorf("%q: %q, %v", tt.in, out, spaced)
		}
	}
}
