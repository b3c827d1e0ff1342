package printing

import (
	"strings"
	"tenthpoint/internal/message/errortest"
	"testing"
)

func slip() Job {
	return Job{Name: "ticket-1042", MIME: PDF, Bytes: []byte("%PDF-1.4 example"), Copies: 1}
}

func TestJobFaults(t *testing.T) {
	tests := []struct {
		name   string
		change func(*Job)
		want   []errortest.Want // every one of these, and no fault when empty
	}{
		{"whole", func(*Job) {}, nil},
		{"twenty copies", func(j *Job) { j.Copies = MostCopies }, nil},
		{"letters of other languages", func(j *Job) { j.Name = "billet é-7" }, nil},
		{"no name", func(j *Job) { j.Name = " " }, []errortest.Want{errortest.Invalid()}},
		{"folder in the name", func(j *Job) { j.Name = "../1042" }, []errortest.Want{errortest.Invalid()}},
		{"Windows folder in the name", func(j *Job) { j.Name = `a\b` }, []errortest.Want{errortest.Invalid()}},
		{"line end in the name", func(j *Job) { j.Name = "a\nb" }, []errortest.Want{errortest.Invalid()}},
		{"hidden file", func(j *Job) { j.Name = ".ticket" }, []errortest.Want{errortest.Invalid()}},
		{"name like a flag", func(j *Job) { j.Name = "-rf" }, []errortest.Want{errortest.Invalid()}},
		{"long name", func(j *Job) { j.Name = strings.Repeat("x", 121) }, []errortest.Want{errortest.Invalid("121", "120")}},
		{"unknown kind", func(j *Job) { j.MIME = "image/gif" }, []errortest.Want{errortest.Invalid("image/gif")}},
		{"text that is not text", func(j *Job) { j.MIME = Text; j.Bytes = []byte{0xff} }, []errortest.Want{errortest.Invalid()}},
		{"no copies", func(j *Job) { j.Copies = 0 }, []errortest.Want{errortest.Invalid("0", "20")}},
		{"too many copies", func(j *Job) { j.Copies = 21 }, []errortest.Want{errortest.Invalid("21")}},
		{"everything wrong", func(j *Job) { *j = Job{} }, []errortest.Want{errortest.Invalid(), errortest.Invalid(), errortest.Invalid("0"), errortest.Invalid()}},
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
				if !want.Met(err) {
					t.Errorf("Check() = %q lacks %q", err, want)
				}
			}
		})
	}
}
