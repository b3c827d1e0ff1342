package present

import (
	"context"
	"tenthpoint/ui/model"
)

// Files takes a finished file that is no paper: a workbook, figures for another
// program. It answers where the file went.
type Files interface {
	Save(ctx context.Context, name string, data []byte) (where string, err error)
}

// save hands a file on and says where it went.
func (f *Frame) save(name, what string, data []byte) {
	if f.Files == nil {
		f.Say(model.Warn, Say("no folder is set up for files. Choose one under Gear."))
		return
	}
	where := ""
	f.Run(model.Job{
		Topic: "save " + name, Title: Say("Writing %s", what),
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			where, err = f.Files.Save(ctx, name, data)
			return err
		},
		Done: func(err error) {
			if err != nil {
				f.Say(model.Warn, Say("%s was not written: %s", what, sentence(err)))
				return
			}
			f.Say(model.OK, Say("%s is written: %s", what, where))
		},
	})
}
