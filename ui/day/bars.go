package day

import (
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Hours are the loads of the day by the hour, Spread by their moisture, and WhereTo the weight that
// came into each bin; all of them stacked by grain.
func (s *DaySheet) Hours() model.Picture {
	return session.PictureOf(s.session.Language, s.sheet.HourPicture())
}
func (s *DaySheet) Spread() model.Picture {
	return session.PictureOf(s.session.Language, s.sheet.SpreadPicture())
}
func (s *DaySheet) WhereTo() model.Picture {
	return session.PictureOf(s.session.Language, s.sheet.PlacePicture())
}
