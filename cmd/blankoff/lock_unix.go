//go:build unix

package main

import (
	"os"
	"syscall"
)

// locks reports that a run can tell what another one is still writing.
const locks = true

// lock takes hold of an open file or folder unless another run has it. The hold
// ends when the file is closed, or the run ends in whatever way.
func lock(f *os.File) bool {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) == nil
}
