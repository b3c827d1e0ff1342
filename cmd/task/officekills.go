package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"os/exec"
	"strings"
	"time"

	"tenthpoint/cmd/task/toolchain"
)

const (
	killsInCheck = 5
	// restEvery is how many kills lie between two looks at all chains.
	restEvery = 100
	// killedWithin is the longest that a command runs before it is killed.
	killedWithin = 300 * time.Millisecond
)

// officeKillsChore kills sites, the office and its server at random while facts are entered and sent.
// At rest, every chain at the office must be the one of its site, and every book sound.
func officeKillsChore(args []string) error {
	flags := flag.NewFlagSet("office-kills", flag.ContinueOnError)
	kills := flags.Int("kills", 1000, "how many")
	seed := flags.Uint64("seed", 1, "what is killed when is drawn from it")
	if err := flags.Parse(args); err != nil {
		return err
	}
	return officeKills(*kills, *seed)
}

// killStep is a short round of it, as a check.
func killStep() bool {
	return step("an office and its sites, killed at random", func() error { return officeKills(killsInCheck, 1) })
}

func officeKills(kills int, seed uint64) (err error) {
	o, err := openOffice(12)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, o.close()) }()
	k := &killing{triedOffice: o, chance: rand.New(rand.NewPCG(seed, 0)), killed: map[string]int{}}
	for n := range kills {
		if err := k.round(n); err != nil {
			return fmt.Errorf("kill %d of seed %d: %w", n+1, seed, err)
		}
		if (n+1)%restEvery == 0 || n+1 == kills {
			if err := k.atRest(); err != nil {
				return fmt.Errorf("at rest after kill %d of seed %d: %w", n+1, seed, err)
			}
			toolchain.Say("%d kills: %v; every chain is the one of its site", n+1, k.killed)
		}
	}
	return nil
}

// killing is a run of kills.
type killing struct {
	*triedOffice
	chance *rand.Rand
	killed map[string]int
}

// round enters a fact at each site, has them sent and looked at, and kills one of those who do it.
func (k *killing) round(n int) error {
	running := map[string]*exec.Cmd{"look": k.tenth("", "office", "find", "corn")}
	for i, site := range triedSites {
		running["act "+site[0]] = k.tenth(site[0], "grower", "add", fmt.Sprint(1000+n), fmt.Sprintf("Grower %d of %d", n, i))
		running["send "+site[0]] = k.tenth(site[0], "office", "send")
	}
	for _, cmd := range running {
		if err := cmd.Start(); err != nil {
			return err
		}
	}
	time.Sleep(time.Duration(k.chance.Int64N(int64(killedWithin))))
	site := triedSites[k.chance.IntN(len(triedSites))][0]
	victim := []string{"act " + site, "send " + site, "look", "server"}[k.chance.IntN(4)]
	if victim == "server" {
		k.killed["server"]++
		if err := k.killServer(); err != nil {
			return err
		}
	} else {
		k.killed[strings.Fields(victim)[0]]++
		if err := running[victim].Process.Kill(); err != nil && running[victim].ProcessState == nil {
			return err
		}
	}
	for _, cmd := range running {
		_ = cmd.Wait() // killed, or refused for want of a server: the rest shows what came of it
	}
	return nil
}

// killServer kills the server's first process and starts it again, as soon as those it leaves behind
// have noticed.
func (k *killing) killServer() (err error) {
	if err := k.running.Process.Kill(); err != nil {
		return err
	}
	<-k.ended
	for range 50 {
		if err = k.run(); err == nil {
			return nil
		}
		time.Sleep(200 * time.Millisecond)
	}
	return err
}

// atRest has every site send what is left, and compares.
func (k *killing) atRest() error {
	for _, site := range triedSites {
		if out, err := k.tenth(site[0], "office", "send").CombinedOutput(); err != nil {
			return fmt.Errorf("%s cannot send: %w: %s", site[0], err, out)
		}
		if out, err := k.tenth(site[0], "verify").CombinedOutput(); err != nil {
			return fmt.Errorf("the book of %s: %w: %s", site[0], err, out)
		}
	}
	if out, err := k.tenth("", "office", "audit").CombinedOutput(); err != nil {
		return fmt.Errorf("the office: %w: %s", err, out)
	}
	out, err := k.tenth("", "office", "sites", "--json").Output()
	if err != nil {
		return err
	}
	var sites []struct {
		Site     string
		BehindBy string `json:"behind_by"`
	}
	if err := json.Unmarshal(out, &sites); err != nil {
		return err
	}
	if len(sites) != len(triedSites) {
		return fmt.Errorf("the office has %d chains: %s", len(sites), out)
	}
	for _, s := range sites {
		if s.BehindBy != "0" {
			return fmt.Errorf("the office is behind %s by %s facts", s.Site, s.BehindBy)
		}
	}
	return nil
}
