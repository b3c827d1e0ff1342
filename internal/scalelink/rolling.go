package scalelink

// A truck does not arrive on a deck as one number. The steering axle comes
// first, then the drive axles, then the rest; then the load swings on its
// springs until it rests. The figures are invented to look right, and are
// counts of scale divisions so that every one of them is a weight the
// indicator could show.

// axles are the shares of the weight, in percent, on the deck while the truck rolls on.
var axles = []int64{11, 12, 47, 49, 83, 97}

// swing is the error of the weight in divisions while the load comes to rest.
var swing = []int64{6, -4, 3, -2, 1}

// rollOn is the weights of a truck of so many divisions driving on to the deck.
func rollOn(divisions int64) []int64 {
	var play []int64
	for _, share := range axles {
		play = append(play, divisions*share/100)
	}
	for _, off := range swing {
		play = append(play, max(divisions+off, 0))
	}
	return append(play, divisions)
}

// rollOff is the same axles leaving, and the deck swinging back to nothing.
func rollOff(divisions int64) []int64 {
	var play []int64
	for i := len(axles) - 1; i >= 0; i-- {
		play = append(play, divisions*axles[i]/100)
	}
	return append(play, 1, 0)
}
