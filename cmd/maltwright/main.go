// Command maltwright checks and forecasts malting processes written as text.
package main

import (
	"os"

	"maltwright/cmd/command"
)

func main() { os.Exit(command.Main(command.Process(), os.Args[1:])) }
