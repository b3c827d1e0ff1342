package elevator

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// CropStart is the day of the year on which the crop year of a grain begins, as month and day: "09-01".
// The day is the house's to say; markets and authorities each have their own.
type CropStart struct {
	Commodity string `json:"commodity"`
	From      string `json:"from"`
}

// CropYear is the crop year that a load of a day is of where nobody says another: the year in which
// the crop year began. It is empty where the house has not said when that of the grain begins.
func (p Profile) CropYear(commodity string, day quantity.Date) string {
	at := slices.IndexFunc(p.CropStarts, func(c CropStart) bool { return c.Commodity == commodity })
	if at < 0 || day.IsZero() {
		return ""
	}
	year := day.Year()
	if day.String()[len("2006-"):] < p.CropStarts[at].From {
		year--
	}
	return fmt.Sprint(year)
}

// Check returns what is wrong with the day, or nil.
func (c CropStart) Check() error {
	if _, err := time.Parse("2006-01-02", "2000-"+c.From); err != nil || c.Commodity == "" {
		return message.Invalid.Errorf("%q is no day of the year for %v. Write it like 09-01, month and day", c.From, c.Commodity)
	}
	return nil
}

// CropStartsText is the list as it is typed: "corn=09-01; wheat-hrw=06-01".
func CropStartsText(all []CropStart) string {
	out := make([]string, len(all))
	for i, c := range all {
		out[i] = c.Commodity + "=" + c.From
	}
	return strings.Join(out, "; ")
}

// lettersForm is the form of letters that stand before the numbers of tickets.
var lettersForm = regexp.MustCompile(`^[A-Z][A-Z0-9]{0,7}$`)

// CheckLetters returns what is wrong with the letters of a site; none are well.
func CheckLetters(letters string) error {
	if letters == "" || lettersForm.MatchString(letters) {
		return nil
	}
	return message.Invalid.Errorf("%q are no letters of a site. Write a capital letter and up to seven more letters or digits, such as KH or ELM2", letters)
}

// Lettered is a number as paper shows it, behind the letters of its site.
func Lettered(letters string, number int64) string {
	if letters == "" {
		return fmt.Sprint(number)
	}
	return fmt.Sprintf("%s-%d", letters, number)
}
