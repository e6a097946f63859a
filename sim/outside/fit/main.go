// Command fit makes the fits behind calibrated constants anew and prints them:
//
//	go run ./sim/outside/fit
//
// # How it works
//
// A fit is a problem (problem.go): constants of the code, each drawn to what is
// published of it, and figures of sources to which they are fitted by least squares
// (least.go). Figures that are held out are asked before and after, and move nothing.
// Another fit is another function that makes a problem, in a file of its own and in the
// list below. What is printed stands in docs/model.md too, where a test holds it
// (MALTWRIGHT_UPDATE=1 writes it), and the test asks that the constants of the code are
// those of the fit.
package main

import (
	"fmt"
	"io"
	"os"
)

// problems are the fits, in the order of the document.
func problems() []*problem { return []*problem{boundWater()} }

func main() {
	if err := run(os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(out io.Writer) error {
	for _, p := range problems() {
		r, err := p.solve()
		if err != nil {
			return fmt.Errorf("%s: %w", p.name, err)
		}
		text, err := p.text(r)
		if err != nil {
			return err
		}
		if _, err := io.WriteString(out, text); err != nil {
			return err
		}
	}
	return nil
}
