package serve

import (
	"net/http"

	"maltwright/cmd/folder"
)

// chartView is a chart as a picture, with what it shows in words.
type chartView struct{ Name, Alt, Light, Dark string }

// chartsOf names the charts of a batch or a process.
func chartsOf(at string, o folder.Opened) (list []chartView) {
	return nil
}

func (s *server) batchChart(w http.ResponseWriter, r *http.Request) error   { return errNoChart }
func (s *server) processChart(w http.ResponseWriter, r *http.Request) error { return errNoChart }
func (s *server) batchSheet(w http.ResponseWriter, r *http.Request) error   { return errNowhere }
func (s *server) processSheet(w http.ResponseWriter, r *http.Request) error { return errNowhere }
func (s *server) report(w http.ResponseWriter, r *http.Request) error       { return errNowhere }
func (s *server) calendar(w http.ResponseWriter, r *http.Request) error     { return errNowhere }
