package older

import (
	"context"
	"encoding/json"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"

	"tenthpoint/internal/transcript"
)

// ratesFolder is where both programs find the elevator's own rates: the editions shipped with the
// older program, since today's may differ.
const ratesFolder = "schedules"

// ownSuffix distinguishes their ids and schedules from those shipped today.
const ownSuffix = "-then"

// An offer is an edition as loads are drawn for it.
type offer struct {
	ID        string `json:"id"`
	Commodity string `json:"commodity"`
	Schedule  string `json:"schedule"`
	From      string `json:"from"`
	Until     string `json:"until"`
	text      string
	metric    bool
	factors   []string
	limits    map[string]bool // factors that a load may be accepted beyond
}

var (
	factorOfEdition = regexp.MustCompile(`(?m)^factor = "([a-z-]+)"`)
	nameInEdition   = regexp.MustCompile(`(?m)^(id|schedule|corrects) = "([^"]+)"`)
)

// readOffers reads the editions shipped with the older program.
func (c *comparison) readOffers() error {
	p := transcript.Program{Path: c.old, Dir: c.scratch}
	list, err := p.Say(context.Background(), "2026-10-01 13:00", "rates", "list", "--all", "--json")
	if err != nil {
		return err
	}
	if err := json.Unmarshal([]byte(list.Out), &c.editions); err != nil {
		return fmt.Errorf("reading the list of editions: %w", err)
	}
	for i := range c.editions {
		shown, err := p.Say(context.Background(), "2026-10-01 13:00", "rates", "show", c.editions[i].ID, "--toml")
		if err != nil {
			return err
		}
		c.editions[i].read(shown.Out)
	}
	return nil
}

// read takes what loads are drawn by from the text of an edition.
func (o *offer) read(text string) {
	o.text = nameInEdition.ReplaceAllString(text, `$1 = "$2`+ownSuffix+`"`)
	o.Schedule += ownSuffix
	o.metric = strings.Contains(text, `weight = "kg"`)
	o.limits = map[string]bool{}
	for part := range strings.SplitSeq(text, "\n[[discount]]") {
		m := factorOfEdition.FindStringSubmatch(part)
		if m == nil || m[1] == "moisture" {
			continue
		}
		o.factors = append(o.factors, m[1])
		o.limits[m[1]] = strings.Contains(part, "\nrefuse")
	}
	if strings.Contains(text, "[dockage]") {
		o.factors = append(o.factors, "dockage")
	}
}

// giveRates writes the editions into the folder of a run.
func (c *comparison) giveRates(dir string) error {
	for _, o := range c.editions {
		if err := writeFrom(strings.NewReader(o.text), filepath.Join(dir, ratesFolder, o.ID+".toml")); err != nil {
			return err
		}
	}
	return nil
}
