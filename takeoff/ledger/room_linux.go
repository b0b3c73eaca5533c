package ledger

import (
	"syscall"
	"unsafe"
)

// largePage is the size of a large page of memory, bytes.
const largePage = 2 << 20

// inLargePages asks that the room of a list comes in large pages where it fills them: it
// is written once from one end to the other, and each small page costs a stop. It is only
// a request; what the list holds is the same.
func inLargePages[T any](list []T) []T {
	var one T
	start := unsafe.Pointer(unsafe.SliceData(list))
	skip := -uintptr(start) % largePage
	size := uintptr(cap(list)) * unsafe.Sizeof(one)
	if size < skip+largePage {
		return list
	}
	whole := unsafe.Slice((*byte)(unsafe.Add(start, skip)), (size-skip)/largePage*largePage)
	_ = syscall.Madvise(whole, syscall.MADV_HUGEPAGE) // refused: then in small ones
	return list
}
