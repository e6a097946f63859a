package folder

import "maltwright/sim/infer/follow"

// following is how the watcher followed the record as it stands, nil where it has not.
func (d *Folder) following(s *standing) *follow.Following { return nil }

// followed is the same in words.
func (d *Folder) followed(s *standing) *Followed { return nil }
