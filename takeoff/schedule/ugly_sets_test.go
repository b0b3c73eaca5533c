package schedule_test

import "testing"

// uglySets are files that older readers wrote and that were read wrong unnamed, or refused
// though plain, when all of them were read again.
func uglySets(testing.TB) []ugly {
	one := rect(.6, .4, 1.5) // 3 m2
	return []ugly{
		csvFile("quantity-none-beside-ones.csv", "Item,Kind,Size,Length,Qty\n1,Straight,600x400,1500,2\n2,Straight,600x400,1500,\n3,Straight,600x400,1500,1\n", 2, 0, 1, 3*one, "3:quantity"),
		csvFile("quantity-none-for-one.csv", "Item,Kind,Size,Length,Qty\n1,Straight,600x400,1500,2\n2,Straight,600x400,1500,\n3,Straight,600x400,1500,4\n4,Straight,600x400,1500,3\n", 4, 0, 0, 10*one, "", "counts as one piece: row 3"),
		csvFile("quantity-none-all-ones.csv", "Item,Kind,Size,Length,Qty\n1,Straight,600x400,1500,1\n2,Straight,600x400,1500,\n3,Straight,600x400,1500,1\n", 3, 0, 0, 3*one, "", "counts as one piece: row 3"),
		csvFile("quantity-none-often.csv", "Item,Kind,Size,Length,Qty\n1,Straight,600x400,1500,1\n2,Straight,600x400,1500,\n3,Straight,600x400,1500,\n4,Straight,600x400,1500,2\n", 4, 0, 0, 5*one, "", "2 rows have no figure under quantity"),
		csvFile("stroke-among-crosses.csv", "Item,Kind,Size,Length\n1,Straight,600x400,1500\n2,Straight,500/300,1500\n3,Straight,600x400,1500\n", 2, 0, 1, 2*one, "3:Size"),
		csvFile("cross-among-strokes.csv", "Item,Kind,Size,Length\n1,Straight,600/400,1500\n2,Straight,600/400,1500\n3,Straight,600x400,1500\n", 3, 0, 0, 3*one, "", "with a stroke"),
	}
}
