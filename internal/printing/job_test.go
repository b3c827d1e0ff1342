package printing

import (
	"strings"
	"testing"
)

func slip() Job {
	return Job{Name: "ticket-1042", MIME: PDF, Bytes: []byte("%PDF-1.4 example"), Copies: 1}
}

func TestJobFaults(t *testing.T) {
	tests := []struct {
		name   string
		change func(*Job)
		want   []string // every one of these, and no fault when empty
	}{
		{"whole", func(*Job) {}, nil},
		{"twenty copies", func(j *Job) { j.Copies = MostCopies }, nil},
		{"letters of other languages", func(j *Job) { j.Name = "billet é-7" }, nil},
		{"no name", func(j *Job) { j.Name = " " }, []string{"has no name"}},
		{"folder in the name", func(j *Job) { j.Name = "../1042" }, []string{"file names cannot have"}},
		{"Windows folder in the name", func(j *Job) { j.Name = `a\b` }, []string{"file names cannot have"}},
		{"line end in the name", func(j *Job) { j.Name = "a\nb" }, []string{"file names cannot have"}},
		{"hidden file", func(j *Job) { j.Name = ".ticket" }, []string{"starts or ends"}},
		{"name like a flag", func(j *Job) { j.Name = "-rf" }, []string{"starts or ends"}},
		{"long name", func(j *Job) { j.Name = strings.Repeat("x", 121) }, []string{"121 letters long; at most 120"}},
		{"unknown kind", func(j *Job) { j.MIME = "image/gif" }, []string{`"image/gif"`}},
		{"text that is not text", func(j *Job) { j.MIME = Text; j.Bytes = []byte{0xff} }, []string{"not UTF-8"}},
		{"no copies", func(j *Job) { j.Copies = 0 }, []string{"0 copies. Ask for 1 to 20"}},
		{"too many copies", func(j *Job) { j.Copies = 21 }, []string{"21 copies"}},
		{"everything wrong", func(j *Job) { *j = Job{} }, []string{"has no name", "is empty", "0 copies", "is of the kind"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			job := slip()
			tt.change(&job)
			err := job.Check()
			if (err == nil) != (len(tt.want) == 0) {
				t.Fatalf("Check() = %v, want faults %q", err, tt.want)
			}
			for _, want := range tt.want {
				if !strings.Contains(err.Error(), want) {
					t.Errorf("Check() = %q lacks %q", err, want)
				}
			}
		})
	}
}
