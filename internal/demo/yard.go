package demo

import (
	"context"
	"time"
)

// leaveYard leaves some grain moved and three trucks half done: one dumping, its sample tested; one
// whose sample is at the bench; one just weighed, on its stored tare.
func (s *season) leaveYard(ctx context.Context) error {
	s.chance = newChance(s.Seed, ofYard)
	dumping, atBench, just := s.waiting(), s.waiting(), s.waiting()
	just.odd.storedTare = just.truck.Tare != nil
	at := func(minutes int, seconds int) time.Time {
		return s.Now.Add(-time.Duration(minutes)*time.Minute + time.Duration(seconds)*time.Second)
	}
	acts := []act{
		{at(14, 0), Clerk, dumping.open}, {at(14, 30), Clerk, dumping.weighGross},
		{at(7, 0), Clerk, atBench.open}, {at(7, 25), Clerk, atBench.weighGross},
		{at(2, 0), Clerk, just.open}, {at(2, 20), Clerk, just.weighGross},
	}
	if just.odd.storedTare {
		acts = append(acts, act{at(2, 40), Clerk, just.weighTare})
	}
	if err := s.perform(ctx, acts); err != nil {
		return err
	}
	if err := s.as(Tester, at(1, 0)); err != nil {
		return err
	}
	if err := dumping.testAtBench(ctx); err != nil {
		return err
	}
	if err := s.as(Clerk, at(1, 30)); err != nil {
		return err
	}
	if err := moveGrain(ctx, s.desk, s.heaps); err != nil {
		return err
	}
	return s.as(Clerk, s.Now)
}

// waiting draws a truck with nothing odd about it.
func (s *season) waiting() *visit {
	v := s.arrival(s.days, s.Now)
	v.odd = oddity{}
	return v
}
