package moisture

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// temperatures checks the effects of heat and cold on a reading: grain too cold, grain hot from a
// dryer, grain and meter too far apart, a room outside the meter's range.
func (j *judge) temperatures() {
	j.dryer()
	sample, room := j.reading.Sample, j.reading.Room
	if !quantity.Recorded(sample) {
		j.raise(NoSample, message.Words("The sample temperature was not recorded."), message.Words("A meter misreads cold and hot grain, and nobody can tell afterwards."), message.Words("Take it with the next test."))
	} else if cold := j.trust.Cold; sample.Less(quantity.TemperatureIn(cold, sample.Unit())) {
		j.raise(Cold, message.New("The sample was at %s, below %s.", sample, cold),
			message.Words("Meters are unreliable on cold grain, and moisture gathers on it when it meets warm air."),
			message.Words("Let it warm in a sealed jar and test again."))
	}
	if !quantity.Recorded(room) {
		j.raise(NoRoom, message.Words("The temperature of the room was not recorded."), message.Words("Whether grain and meter were near enough cannot be told."), message.Words("Read the thermometer beside the meter."))
		return
	}
	j.room(room)
	if quantity.Recorded(sample) {
		j.difference(sample, room)
	}
}

func (j *judge) dryer() {
	if j.reading.FromDryer {
		j.raise(FromDryer, message.Words("The grain is hot from a dryer."),
			message.Words("Its skin is drier than its heart: a meter reads about 2 points low, and the moisture comes back."),
			message.Words("Seal the sample, wait about 12 hours and test again."))
	}
}

func (j *judge) room(room quantity.Amount) {
	allowed := j.meter.Ambient
	if j.chart != nil {
		allowed = j.chart.Ambient
	}
	if !allowed.ContainsTemperature(room) {
		j.raise(RoomOutside, message.New("The meter stood at %s, outside its %s.", room, allowed),
			message.Words("It was not made to measure there."), message.Words("Bring meter and sample to a room in that range, let both settle and test again."))
	}
}

// upToTenth shows a difference so that one just over a limit reads as over it.
var upToTenth = quantity.To("0.1", quantity.Up)

func (j *judge) difference(sample, room quantity.Amount) {
	most := j.meter.MaxDifference
	if j.chart != nil {
		most = j.chart.MaxDifference
	}
	if !quantity.Recorded(most) {
		return
	}
	scale := most.Unit()
	gap := apart(quantity.TemperatureIn(sample, scale), quantity.TemperatureIn(room, scale))
	if gap.More(most) {
		j.raise(MeterToGrain, message.New("Grain at %s and meter at %s are %s apart, more than %s.", sample, room, upToTenth.Apply(gap), most),
			message.Words("The grain changes temperature in the cell while it is measured."), message.Words("Let the sealed sample come to the meter's temperature and test again."))
	}
}
