package main

// noTerminal refuses to write a PDF onto a terminal.
func (w *World) noTerminal(format string) error {
	if format == "pdf" && w.Terminal {
		return usage("a PDF is no text for a terminal; write it into a file, with > and its name behind the command")
	}
	return nil
}

// onPaper tells which letters a PDF that was written lacks.
func (w *World) onPaper(lost string, err error) error {
	if err == nil && lost != "" {
		w.aside(lost)
	}
	return err
}
