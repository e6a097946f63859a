package read

import "maltwright/lang/model"

// ownCharge holds the charge of a record that is not that of its process against what it
// lies in and on, and reports the worst. What was out as much with the process's own charge
// is told there.
func (b *builder) ownCharge(t *model.Batch) {
	if !t.OwnCharge() || t.Process.Broken {
		return
	}
	other := *t.Process
	other.Charge = t.From.Other
	were := chargeShares(&other)
	var worst *share
	for i, s := range chargeShares(t.Process) {
		side, cannot := s.out(s.Usual), s.out(s.Can) != 0
		told := i < len(were) && were[i].out(s.Usual) == side && (were[i].out(s.Can) != 0) == cannot
		if side != 0 && !told && (worst == nil || cannot && worst.out(worst.Can) == 0) {
			worst = &s
		}
	}
	if worst != nil {
		b.disproportion(*worst, t.Process.Charge)
	}
}
