package job

import "blankoff/planner/tightness"

// Letter is who writes a letter to whom. The date is the writer's own text.
type Letter struct {
	To, From, Date string
}

// readLetter reads the head of a letter.
func (j *Job) readLetter(t *tightness.Table) {
	if t == nil {
		return
	}
	t.Only("to", "from", "date")
	j.Letter = Letter{To: t.Text("to"), From: t.Text("from"), Date: t.Text("date")}
}
