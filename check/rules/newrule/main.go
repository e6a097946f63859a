// Command newrule makes the skeleton of a rule, for contributors:
//
//	go run ./check/rules/newrule -family kiln my-rule
//
// It writes check/rules/my-rule.go and check/rules/testdata/my-rule.txtar, and says
// what is left to do. It overwrites nothing.
package main

import (
	"flag"
	"fmt"
	"os"
)

func main() {
	family := flag.String("family", "", "the family that the rule belongs to, such as kiln")
	folder := flag.String("folder", "check/rules", "the folder of the rules")
	flag.Usage = func() {
		fmt.Fprintln(flag.CommandLine.Output(), "usage: go run ./check/rules/newrule -family FAMILY rule-name")
		flag.PrintDefaults()
	}
	flag.Parse()
	if flag.NArg() != 1 || *family == "" {
		flag.Usage()
		os.Exit(2)
	}
	left, err := write(*folder, *family, flag.Arg(0))
	if err != nil {
		fmt.Fprintln(os.Stderr, "newrule:", err)
		os.Exit(1)
	}
	fmt.Print(left)
}
