package finding

// NotJudged is something that could not be looked at, and why.
type NotJudged struct {
	File    string
	Process string `json:",omitempty"` // its name, where it is of one process
	Rule    string
	Reason  string
}
