package command

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// plainCell is a cell that a spreadsheet takes for the number that it is, or the name of
// standard input.
var plainCell = regexp.MustCompile(`^(-|-?\d+(\.\d+)?)$`)

// formula are the characters with which a cell begins that a spreadsheet reckons with,
// the wide ones too, and those that it passes over before it looks.
const formula = "=+-@\t\r\n＝＋－＠"

// inert makes a cell that would be a formula into text, with an apostrophe before it:
// names come from files, and a file may come from anybody.
func inert(cell string) string {
	if cell == "" || !strings.ContainsAny(firstOf(cell), formula) || plainCell.MatchString(cell) {
		return cell
	}
	return "'" + cell
}

func firstOf(text string) string {
	for _, r := range text {
		return string(r)
	}
	return ""
}

// writeCSV writes rows for a spreadsheet. All CSV is written here.
func writeCSV(w io.Writer, rows [][]string) error {
	out := csv.NewWriter(w)
	for _, row := range rows {
		cells := make([]string, len(row))
		for i, cell := range row {
			cells[i] = inert(cell)
		}
		_ = out.Write(cells) // an error stays and is given by Error below
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("csv: %w", err)
	}
	return nil
}

// figureCell is a figure for a cell, which is empty where there is none.
func figureCell(x float64, digits int) string {
	if known(x) == nil {
		return ""
	}
	return decimals(x, digits)
}

// decimals writes a figure with so many digits behind the point, and no minus before
// nothing.
func decimals(x float64, digits int) string {
	text := strconv.FormatFloat(x, 'f', digits, 64)
	if math.Abs(x) < 1 && strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}
