package keep

import "tenthpoint/internal/message"

// What is said where the act is. Local law and licensed people go before anything
// here.
var (
	advice   = message.New("This is advice, not a promise: look at the grain, and measure its temperature and moisture again.").String()
	hotGrain = message.New("Grain that warms, smells sour or crusts may be spoiling or on fire inside: ask the local fire service before it is moved or air is blown in.").String()
	binEntry = message.New("Nobody enters a bin while grain moves or hangs: entering is for trained people, under the local rules for confined spaces.").String()
	fumigant = message.New("Insects are treated by licensed applicators, under the label and local law; nothing is said here of fumigants.").String()
)
