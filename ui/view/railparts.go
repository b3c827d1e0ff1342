package view

import (
	"fyne.io/fyne/v2"
)

// railSetting is how much the rail shows.
type railSetting int

// The settings, the fullest first. In each of them nothing lies over anything else.
const (
	roomyRail railSetting = iota // three lines for every truck, and the list of screens
	closeRail                    // two lines for every truck
	shortRail                    // one line that names the keys, in place of the list
	fullRail                     // and the trucks scroll
)

// railParts sets the parts of the rail one under the other: its head, the trucks,
// and at the foot the list of screens. It shows what there is room for.
type railParts struct{ rail *rail }

// parts are the objects of the rail.
func (railParts) parts(o []fyne.CanvasObject) (head, trucks, empty, list, line fyne.CanvasObject) {
	return o[0], o[1], o[2], o[3], o[4]
}

// MinSize is the head, one truck and the line of keys.
func (l railParts) MinSize(objects []fyne.CanvasObject) fyne.Size {
	head, _, empty, _, line := l.parts(objects)
	high := l.oneTruck()
	if empty.Visible() {
		high = empty.MinSize().Height
	}
	return fyne.NewSize(head.MinSize().Width, head.MinSize().Height+high+line.MinSize().Height)
}

// oneTruck is the height of one short card.
func (l railParts) oneTruck() float32 {
	c := newTruckCard(l.rail.window)
	c.short = true
	return c.MinSize().Height
}

// needs is the height of the trucks in a setting.
func (l railParts) needs(at railSetting) float32 {
	high := float32(0)
	for i := range l.rail.trucks.Objects {
		high += l.rail.card(i).height(at != roomyRail) + cardGap
	}
	return high
}

// cardGap is the ground between two trucks.
const cardGap = 3

// choose is the fullest setting that a height has room for.
func (l railParts) choose(room, empty, list, line float32) railSetting {
	switch {
	case l.needs(roomyRail)+empty+list <= room:
		return roomyRail
	case l.needs(closeRail)+empty+list <= room:
		return closeRail
	case l.needs(shortRail)+empty+line <= room:
		return shortRail
	}
	return fullRail
}

// Layout sets the parts.
func (l railParts) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	head, trucks, empty, list, line := l.parts(objects)
	top, none := head.MinSize().Height, float32(0)
	if empty.Visible() {
		none = empty.MinSize().Height
	}
	at := l.choose(size.Height-top, none, list.MinSize().Height, line.MinSize().Height)
	l.rail.setting = at
	for i := range l.rail.trucks.Objects {
		l.rail.card(i).shorten(at != roomyRail)
	}
	listed := at == roomyRail || at == closeRail
	setVisible(list, listed)
	setVisible(line, !listed)
	foot := line
	if listed {
		foot = list
	}
	low := foot.MinSize().Height
	put(head, 0, 0, size.Width, top)
	put(trucks, 0, top, size.Width, size.Height-top-low)
	put(empty, 0, top, size.Width, none)
	put(foot, 0, size.Height-low, size.Width, low)
}
