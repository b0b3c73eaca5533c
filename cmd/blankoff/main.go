// Command blankoff divides ductwork into leakage-test sections that a rig can
// judge. The work is in the packages takeoff and planner; here are the flags.
package main

import "os"

func main() {
	sparing()
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}
