package entry

import (
	"strings"

	"tenthpoint/internal/elevator"
)

// ParseCropStarts reads the days on which crop years begin: "corn=09-01; wheat-hrw=06-01". Empty is none.
func ParseCropStarts(text string) ([]elevator.CropStart, error) {
	var out []elevator.CropStart
	for _, one := range strings.Split(text, ";") {
		if one = strings.TrimSpace(one); one == "" {
			continue
		}
		name, from, _ := strings.Cut(one, "=")
		c, err := Commodity(strings.TrimSpace(name))
		if err != nil {
			return nil, err
		}
		start := elevator.CropStart{Commodity: c.ID, From: strings.TrimSpace(from)}
		if err := start.Check(); err != nil {
			return nil, err
		}
		out = append(out, start)
	}
	return out, nil
}
