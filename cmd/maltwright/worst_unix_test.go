//go:build unix

package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"

	"maltwright/lang/source/spoil"
	"maltwright/lang/vocabulary/invent"
)

// dearest are files of a few lines that ask for as much as the language lets them: deep
// beds that are stirred all the time, searches within searches, months.
func dearest() []string {
	const head = `grain "x" { species barley; moisture 12 % }
site "x" { air 8 to 15 °C; humidity 55 to 80 %; water 9 to 12 °C; awake 06:30 to 22:30 }
vessel "x" { holds 1000 l }
floor "x" { area 20 m2 }
kiln "x" { area 1 m2; airflow 3000 m3/h; reaches 10 to 120 °C; heater 20 kW; returns 90 % }
`
	const whole = "process %q {\n make pale malt\n from 400 kg of \"x\"\n at \"x\"\n" +
		" steep in \"x\" { soak 7 h in water; rest 9 h in air; soak 7 h in water; rest 9 h in air; soak 4 h in water }\n" +
		" germinate on \"x\" { %s }\n kiln in \"x\" { %s }\n}\n"
	const grow = "hold bed at 14 to 17 °C; turn every 8 h; until acrospire at least 3/4; allow 3 to 8 days"
	var files []string
	for _, c := range [][2]string{
		{"hold bed at 14 to 17 °C; turn every 1 min; for 10000 weeks", "dry at air-on 50 °C for 24 h"},
		{grow, "stir every 1 min; dry at malt 50 °C for 10000 weeks"},
		{grow, "dry at air-off 45 °C until moisture at most 1 % allow 1 to 10000 weeks; " + strings.Repeat("gate moisture at most 0.1 %; ", 400)},
		{grow, strings.Repeat("dry at malt 55 °C until moisture at most 1 % allow 0.1 to 0.2 h; dry from air-off 20 to 110 °C over 1 h; ", 240)},
	} {
		one := fmt.Sprintf(whole, "p", c[0], c[1])
		var all strings.Builder
		for i := 0; all.Len()+len(one)+8 < invent.MostBytes; i++ {
			all.WriteString(fmt.Sprintf(whole, fmt.Sprint("p", i), c[0], c[1]))
		}
		files = append(files, head+one, head+all.String())
	}
	return files
}

var firstProcess = regexp.MustCompile(`process "(\w+)"`)

// BenchmarkWorstFile runs the commands that forecast, with their usual options, over
// random files of up to 64 KiB and over the dearest ones, and tells the longest that one
// took of all cores together and the most memory that was resident: it is to stay under
// 10 s and 1 GB. The flag -seeds says how many random files.
func BenchmarkWorstFile(b *testing.B) {
	folder, texts := b.TempDir(), dearest()
	for seed := range spoil.Seeds(20, 1000) {
		if text := invent.File(seed); firstProcess.MatchString(text) { // one that is too long is left out
			texts = append(texts, text)
		}
	}
	for i, text := range texts {
		if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("%d.malt", i)), []byte(text), 0o644); err != nil {
			b.Fatal(err)
		}
	}
	for _, command := range []string{"check", "forecast", "visits", "contrast"} {
		b.Run(command, func(b *testing.B) {
			for range b.N {
				worst(b, folder, command, texts)
			}
		})
	}
}

// worst runs a command over all files.
func worst(b *testing.B, folder, command string, texts []string) {
	w := World{In: strings.NewReader(""), Out: io.Discard, Err: io.Discard, Folder: folder, Env: func(string) string { return "" }}
	longest, which := 0.0, 0
	for i, text := range texts {
		name, other := fmt.Sprintf("%d.malt", i), fmt.Sprintf("%d.malt", (i+1)%len(texts))
		args := map[string][]string{
			"check":    {"check", name},
			"forecast": {"forecast", name, "--process", firstProcess.FindStringSubmatch(text)[1]},
			"visits":   {"visits", name, "--process", firstProcess.FindStringSubmatch(text)[1], "--start", "2026-03-06T07:00"},
			"contrast": {"contrast", name, other},
		}[command]
		began, _ := used(b)
		Main(w, args)
		if now, _ := used(b); now-began > longest {
			longest, which = now-began, i
		}
	}
	_, resident := used(b)
	b.ReportMetric(longest, "s-worst")
	b.ReportMetric(float64(which), "file-worst")
	b.ReportMetric(resident, "MB-worst")
}

// used is the time that the program has used of all cores, s, and the most memory that
// was resident, MB.
func used(b *testing.B) (seconds, megabytes float64) {
	var r syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &r); err != nil {
		b.Fatal(err)
	}
	in := func(t syscall.Timeval) float64 { return float64(t.Nano()) / 1e9 }
	return in(r.Utime) + in(r.Stime), float64(r.Maxrss) / 1000 // kilobytes, but for some systems
}
