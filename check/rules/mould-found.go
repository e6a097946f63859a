package rules

import (
	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var mouldFound = Rule{
	Rule: finding.Rule{Name: "mould-found", Severity: finding.Danger,
		Title: "mould was found on the grain",
		Why:   "moulds of the ear and the store leave poisons such as DON in the kernel; steep and floor feed the mould further, and kiln and mash do not destroy the poison",
		Do:    "do not malt it unless a laboratory has tested it for DON and cleared it; then write mould none; no test at home can clear it",
		Bad:   `mould found`,
		Good:  `mould none`,
		Limits: "pink, white and shrunken kernels show mould of the ear, but grain that looks sound can hold its poison, and dark tips alone " +
			"may come from the weather"},
	Judge: func(r finding.Rule, c *Case) {
		if g := c.Process.Grain; g != nil && g.Mould.Text == vocabulary.SaidFound {
			c.Note(r.At(g.Mould.Place, "mould was found on this lot, and moulds leave poison in the kernel"))
		}
	},
}
