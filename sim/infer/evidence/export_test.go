package evidence

// Independent takes every reading for one that stands alone.
func (t *Trial) Independent() {
	for i := range t.Observations {
		t.Observations[i].Worth = 1
	}
}
