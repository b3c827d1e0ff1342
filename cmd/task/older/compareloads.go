package older

import (
	"context"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"

	"tenthpoint/internal/transcript"
)

// loadsAFile is the number of loads settled by one command.
const loadsAFile = 2500

const loadsFile = "loads.csv"

// settleLoads settles random loads with both programs and compares every row.
func (c *comparison) settleLoads() error {
	if c.loads == 0 || c.only > 0 {
		return nil
	}
	editions := c.editions
	return c.eachOf((c.loads+loadsAFile-1)/loadsAFile, func(i int) error {
		rows := min(loadsAFile, c.loads-(i-1)*loadsAFile)
		table := randomLoads(drawing(c.seed, "loads", i), editions, rows)
		return c.settleFile(i, table)
	})
}

func (c *comparison) settleFile(i int, table [][]string) error {
	var said [2]transcript.Entry
	for n, path := range []string{c.old, c.today} {
		dir := filepath.Join(c.scratch, fmt.Sprintf("loads-%d-%d", i, n))
		if err := writeTable(filepath.Join(dir, loadsFile), table); err != nil {
			return err
		}
		var err error
		p := transcript.Program{Path: path, Dir: dir}
		if err := c.giveRates(dir); err != nil {
			return err
		}
		if said[n], err = p.Say(context.Background(), "2026-10-01 13:00", "settle", "--schedules", ratesFolder, "--batch", loadsFile); err != nil {
			return err
		}
	}
	before, err := byRow(said[0])
	if err != nil {
		return err
	}
	after, err := byRow(said[1])
	if err != nil {
		return err
	}
	for row, said := range after {
		said.Out = asCharges(said.Out)
		after[row] = said
	}
	for n := 1; n < len(table); n++ {
		row := table[n][0]
		settled := 0
		if before[row].Out != "" {
			settled = 1
		}
		where := fmt.Sprintf("file %d, %s", i, strings.Join(table[n], ","))
		c.count(where, transcript.Compare(before[row], after[row], c.allowed), func() { c.rows, c.settled = c.rows+1, c.settled+settled })
	}
	return nil
}

var (
	servicesLine    = regexp.MustCompile(`(?m)^charges: .*\n`)
	adjustmentsLine = regexp.MustCompile(`(?m)^adjustments: (-?)(.*)$`)
)

// asCharges writes what today's program says of the money beside the value as the older one did:
// one figure of services and quality, counted from the owner, where today charges are services alone
// and adjustments all of it, counted to the owner.
func asCharges(out string) string {
	return adjustmentsLine.ReplaceAllStringFunc(servicesLine.ReplaceAllString(out, ""), func(line string) string {
		m := adjustmentsLine.FindStringSubmatch(line)
		switch {
		case m[1] == "-" || m[2] == "0.00":
			return "charges: " + m[2]
		default:
			return "charges: -" + m[2]
		}
	})
}

func writeTable(path string, table [][]string) error {
	var text strings.Builder
	w := csv.NewWriter(&text)
	if err := w.WriteAll(table); err != nil {
		return err
	}
	return writeFrom(strings.NewReader(text.String()), path)
}

var rowOfComplaint = regexp.MustCompile(`^error: ` + loadsFile + ` row (\d+)`)

// byRow splits the output of a batch by load: a line for each column, and the complaints. Loads are
// named by their row.
func byRow(said transcript.Entry) (map[string]transcript.Entry, error) {
	out := map[string]transcript.Entry{}
	table, err := csv.NewReader(strings.NewReader(said.Out)).ReadAll()
	if err != nil || len(table) == 0 {
		return nil, fmt.Errorf("the batch did not settle: %w, %s", err, said.Err)
	}
	for _, record := range table[1:] {
		e := transcript.Entry{Args: said.Args}
		for i, cell := range record {
			e.Out += table[0][i] + ": " + cell + "\n"
		}
		out[record[0]] = e
	}
	row := ""
	for line := range strings.Lines(said.Err) {
		if m := rowOfComplaint.FindStringSubmatch(line); m != nil {
			row = m[1]
		}
		e := out[row]
		e.Args, e.Err = said.Args, e.Err+line
		out[row] = e
	}
	return out, nil
}

// columns come before those of the factors.
var columns = []string{"load", "commodity", "schedule", "day", "gross", "tare", "moisture", "price", "accept"}

// randomLoads draws a table of loads for settle --batch, its first row the
// columns.
func randomLoads(r *rand.Rand, editions []offer, rows int) [][]string {
	place := map[string]int{}
	head := append([]string(nil), columns...)
	for _, e := range editions {
		for _, f := range e.factors {
			if place[f] == 0 {
				place[f] = len(head)
				head = append(head, "factor."+f)
			}
		}
	}
	table := [][]string{head}
	for n := range rows {
		row := make([]string, len(head))
		e := editions[r.IntN(len(editions))]
		gross, tare := weights(r, e.metric)
		copy(row, []string{strconv.Itoa(n + 2), e.Commodity, e.Schedule, dayIn(r, e), gross, tare, moisture(r), price(r, e), ""})
		var accepted []string
		for _, f := range e.factors {
			if f == "test-weight" || f == "dockage" || r.IntN(5) < 2 {
				row[place[f]] = result(r, f, e.metric)
			}
			if e.limits[f] && r.IntN(12) == 0 {
				accepted = append(accepted, f)
			}
		}
		row[8] = strings.Join(accepted, " ")
		table = append(table, row)
	}
	return table
}
