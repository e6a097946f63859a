package founding

import (
	"bytes"

	"maltwright/check"
	"maltwright/lang/finding"
)

// judged checks a file of the house as it will be.
func (s *sheet) judged(f File) check.Report {
	return check.File(f.Name, f.Text, ".", beside{f, s.Root}, check.Options{NoForecast: true})
}

// new tells what check finds of a house that it did not find before.
func (s *sheet) new(after check.Report) (list []string) {
	before := map[string]bool{}
	for _, f := range check.File(s.Main, s.text(s.Main), ".", beside{File{Name: s.Main, Text: s.text(s.Main)}, s.Root}, check.Options{NoForecast: true}).Findings {
		before[f.Rule+f.Message] = true
	}
	for _, f := range after.Findings {
		if f.Severity >= finding.Caution && !before[f.Rule+f.Message] {
			list = append(list, said(f))
		}
	}
	return list
}

// said is a finding as one sentence with what to do.
func said(f finding.Finding) string {
	var b bytes.Buffer
	b.WriteString(f.Message)
	if f.Hint != "" {
		b.WriteString(": " + f.Hint)
	}
	return b.String()
}
