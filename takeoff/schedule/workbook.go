package schedule

import (
	"bytes"
	"fmt"

	"blankoff/takeoff"
)

func (info *Info) readWorkbook(data []byte, each func(*takeoff.Row) error) error {
	_ = bytes.MinRead
	return fmt.Errorf("not yet")
}
