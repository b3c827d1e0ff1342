package older

import "slices"

// What a typist types at the scale, at the bench and about tickets.

// details returns random flags for a load and its grower.
func (t *typist) details(grain string) []string {
	return slices.Concat(
		[]string{"--grower", t.pick("102", "103", "103", "901", "Holloway", "999"), "--commodity", grain},
		[]string{"--truck", t.pick("7", "7", "9", "XYZ 1")},
		t.some(2, "--bin", t.pick("P1", "P1", "B9")),
		t.terms(), t.some(8, "--no-shares"), t.some(8, "--share", "103=1/2", "--share", "901=1/2"),
		t.some(8, "--remark", "came late"), t.some(9, "--crop-year", "2026"), t.some(12, "--class", "x"),
		t.some(12, "--day", t.day()), t.some(14, "--driver", "N. Other"))
}

// terms are a price, or that the grain is stored: of both together the program
// before the rebuild made a ticket, and the one after refuses it.
func (t *typist) terms() []string {
	switch t.IntN(6) {
	case 0:
		t.stored = true
		return []string{"--stored"}
	case 1, 2:
		return nil
	}
	return []string{"--price", t.pick("4.12", "later", "4.005", "11.375", "230", "0", "four")}
}

func (t *typist) receive() {
	grain := t.pick(t.grains...)
	tare := []string{"--tare", t.weight(20000)}
	if t.IntN(4) == 0 {
		tare = []string{"--stored-tare"}
	}
	t.asClerk(slices.Concat([]string{"receive"}, t.details(grain),
		[]string{"--gross", t.weight(42000)}, tare, typedWeights, []string{"--moisture", t.moisture()}, t.results(grain),
		t.some(10, "--json"), t.some(10, "--roll"), t.some(10, "--accept", "damage=fed at once"), t.some(20, "--each-owner"))...)
	t.loads, t.tickets = t.loads+1, t.tickets+1
}

// asClerk is a line anybody may type.
func (t *typist) asClerk(args ...string) {
	t.line(append(args, t.some(8, "--who", t.pick("Mae Orton", "Some Body"))...)...)
}

func (t *typist) open() {
	t.asClerk(slices.Concat([]string{"open"}, t.details(t.pick(t.grains...)), t.some(5, "--outbound", "--consignee", "A buyer"))...)
	t.loads++
	if t.IntN(3) > 0 {
		t.line(append([]string{"weigh", t.load(), "--gross", t.weight(42000)}, typedWeights...)...)
	}
}

func (t *typist) weigh() {
	t.asClerk(append([]string{"weigh", t.load()}, slices.Concat([][]string{{"--tare", t.weight(20000)}, {"--gross", t.weight(42000)}, {"--stored-tare"}, {}}[t.IntN(4)], typedWeights)...)...)
}

func (t *typist) sample() {
	t.asClerk(slices.Concat([]string{"sample", t.load(), "--moisture", t.moisture()}, t.results(t.pick(t.grains...)), t.some(6, "--grade", "US No. 2"))...)
}

func (t *typist) issue() {
	t.asClerk("issue", t.load())
	t.tickets++
}

func (t *typist) refuse() { t.asClerk("refuse", t.load(), "--reason", t.pick("hot and musty", "")) }

func (t *typist) void() {
	t.asManager("void", t.ticket(), "--reason", t.pick("wrong truck", "paid twice", ""))
}

func (t *typist) correct() {
	change := [][]string{{"--moisture", t.moisture()}, {"--tare", t.weight(20000), "--manual", typedWeights[1]}, {"--grower", "103"}, {"--remark", "x"}, {}, {"--price", "5.5"}}[t.IntN(6)]
	if t.stored && len(change) > 0 && change[0] == "--price" {
		change = []string{"--bin", "P1"} // stored grain takes no price
	}
	t.asManager(append([]string{"correct", t.ticket(), "--reason", "read wrongly"}, change...)...)
	t.loads, t.tickets = t.loads+1, t.tickets+1
}

func (t *typist) reissue() {
	t.asManager(append([]string{"reissue", t.ticket()}, t.some(3, "--yard")...)...)
	t.loads, t.tickets = t.loads+1, t.tickets+1
}

func (t *typist) dispute() {
	id := "D" + t.pick("1", "1", "2")
	switch t.IntN(5) {
	case 0:
		t.line("dispute", "send", id, "--sample", "S-1", "--to", "State laboratory", "--sealed-by", "Cal Reyes", "--witness", "B. Holloway", "--airtight")
	case 1:
		t.line("dispute", "result", id, "--by", "State laboratory", "--figure", "16.9 %", "--certificate", "26-4411", "--finding", "16.9 % by oven")
	case 2:
		t.asManager("dispute", "decide", id, "--stands", "--decision", "as it was")
	case 3:
		t.asManager("dispute", "decide", id, "--corrected", t.ticket(), "--decision", "on the certificate")
	default:
		t.asClerk("dispute", "raise", t.ticket(), "--by", "B. Holloway", "--about", t.pick("moisture", "weight", "damage", "mood"), "--claim", "less at home")
	}
}

func (t *typist) closeDay() {
	t.asManager(slices.Concat([]string{"day", "close"}, t.some(3, t.day()), t.some(3, "--remark", "all well"))...)
}

func (t *typist) benchTest() {
	kinds := [][]string{
		{"--meter", "bench-1", "--mass", "250", "--dial", t.pick("70", "64.5", "400"), "--dial", "70.5", "--at", t.pick("65F", "35F", "18C"), "--room", "68F"},
		{"--oven", "20/17/0", "--oven", "20/16.9/0"},
		{"--typed", t.moisture(), "--why", "certificate 881"},
	}
	kind := t.IntN(len(kinds))
	if kind == 0 && slices.Contains(t.grains, "wheat-hrw") {
		kind = 1 // the chart of wheat that is shipped as an example is another
	}
	t.asClerk(slices.Concat([]string{"bench", "test", t.load()}, kinds[kind], t.some(3, "--try"), t.some(4, "--json"), t.some(4, "--working"))...)
}

func (t *typist) benchSample() {
	switch t.IntN(3) {
	case 0:
		t.asClerk("bench", "samples", "discard", "--all-due")
	default:
		t.asClerk("bench", "samples", "take", t.load(), "--probe", "middle", "--probe", "right rear=musty", "--keep", "Shelf A1")
	}
}

// settle is a sum without a book.
func (t *typist) settle() {
	grain := t.pick(t.grains...)
	t.line(slices.Concat([]string{"settle", "--commodity", grain, "--gross", t.weight(42000), "--tare", t.weight(20000), "--moisture", t.moisture()},
		t.results(grain), t.some(2, "--price", t.pick("4.12", "9.995", "210")), t.some(2, "--share", "Ada=2/3", "--share", "Bo=1/3"),
		t.some(3, "--schedule", t.pick("main-then", "river-then", "statute-then", "metric-then")), t.some(3, "--json"))...)
}

// change is a change to the master data.
func (t *typist) change() {
	switch t.IntN(4) {
	case 0:
		t.line("grower", "add", "104", "Three Brothers", "--share", "104=1/3", "--share", "102=1/3", "--share", "103=1/3")
	case 1:
		t.line("truck", "add", "9", "--grower", "103", "--tare", t.storedTare(20000))
	case 2:
		t.asManager("setup", "--language", t.pick("fr", "en"))
	default:
		t.asManager("bench", "setup", "--authority", "us-official", "--stop", "cold", "--policy", "corn:count=2,spread=0.4")
	}
}

// look is a question about a ticket or the elevator.
func (t *typist) look() {
	n := t.ticket()
	questions := [][]string{
		{"show", n}, {"show", n, "--json"}, {"show", n, "--owner", "1"}, {"explain", n}, {"explain", n, "--json"}, {"proof", n},
		{"difference", n, t.ticket()}, {"yard"}, {"yard", "--json"}, {"find", t.pick("holl", "corn", "7", "1")}, {"find", "--json", "--grower", "102"},
		{"day"}, {"day", t.day()}, {"day", "--json"}, {"position"}, {"position", "--json"}, {"account", t.pick("102", "103", "901")},
		{"account", "102", "--json"}, {"dispute", "list", "--all"}, {"dispute", "show", "D1"}, {"reprint", n}, {"grower", "list"}, {"setup"},
		{"bench", "worth", t.load()}, {"bench", "worth", n}, {"bench", "dry", t.load()}, {"bench", "samples", "list"}, {"bench", "due"}, {"bench", "meters"}, {"verify"},
	}
	t.line(questions[t.IntN(len(questions))]...)
}

// lookAtAll ends a script with everything that adds up.
func (t *typist) lookAtAll() {
	for _, line := range [][]string{
		{"verify"}, {"find", "--json"}, {"yard", "--json"}, {"position"}, {"account", "102"}, {"account", "103"},
		{"day", "2026-10-01"}, {"day"}, {"explain", "1", "--json"}, {"explain", "2", "--json"}, {"show", "1"}, {"show", "2"},
	} {
		t.line(line...)
	}
}
