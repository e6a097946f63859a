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
func problems() []*problem { return []*problem{boundWater(), steeping(), colouring()} }

func main() {
	list, err := solved()
	if err == nil {
		err = write(os.Stdout, list)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// solution is a fit that was made.
type solution struct {
	*problem
	result
}

// solved makes all fits.
func solved() ([]solution, error) {
	var list []solution
	for _, p := range problems() {
		r, err := p.solve()
		if err != nil {
			return nil, fmt.Errorf("%s: %w", p.name, err)
		}
		list = append(list, solution{p, r})
	}
	return list, nil
}

func write(out io.Writer, list []solution) error {
	for _, s := range list {
		text, err := s.text(s.result)
		if err != nil {
			return err
		}
		if _, err := io.WriteString(out, text); err != nil {
			return err
		}
	}
	return nil
}
