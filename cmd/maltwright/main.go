// Command maltwright checks and forecasts malting processes written as text.
//
// A command is a value with its flags, run over given streams (World), so that a test
// can run it as a person would. It finds the files, asks one of cmd/answer, hands what
// it got to one of cmd/write, and gives the exit code; it reckons nothing and lays out
// nothing itself.
package main

import "os"

func main() { os.Exit(Main(Process(), os.Args[1:])) }
