package shell

import (
	"fyne.io/fyne/v2"
)

// sidebarSetting is the level of detail of the sidebar.
type sidebarSetting int

// The settings, the fullest first. In none of them do parts overlap.
const (
	roomySidebar sidebarSetting = iota // three lines for every truck, and the list of screens
	closeRail                          // two lines for every truck
	shortRail                          // one line that names the keys, in place of the list
	FullSidebar                        // and the trucks scroll
)

// sidebarParts sets the parts of the sidebar one under the other: its head, the trucks,
// and at the foot the list of screens. It shows what there is room for.
type sidebarParts struct{ sidebar *Sidebar }

// parts are the objects of the sidebar.
func (sidebarParts) parts(o []fyne.CanvasObject) (head, trucks, empty, list, line fyne.CanvasObject) {
	return o[0], o[1], o[2], o[3], o[4]
}

// MinSize is the head, one truck and the line of keys.
func (l sidebarParts) MinSize(objects []fyne.CanvasObject) fyne.Size {
	head, _, empty, _, line := l.parts(objects)
	high := l.oneTruck()
	if empty.Visible() {
		high = empty.MinSize().Height
	}
	return fyne.NewSize(head.MinSize().Width, head.MinSize().Height+high+line.MinSize().Height)
}

// oneTruck is the height of one short card.
func (l sidebarParts) oneTruck() float32 {
	c := NewTruckCard(l.sidebar.window)
	c.short = true
	return c.MinSize().Height
}

// needs is the height of the trucks in a setting.
func (l sidebarParts) needs(at sidebarSetting) float32 {
	high := float32(0)
	for i := range l.sidebar.Trucks.Objects {
		high += l.sidebar.Card(i).height(at != roomySidebar) + CardGap
	}
	return high
}

// CardGap is the ground between two trucks.
const CardGap = 3

// choose is the fullest setting that a height has room for.
func (l sidebarParts) choose(room, empty, list, line float32) sidebarSetting {
	switch {
	case l.needs(roomySidebar)+empty+list <= room:
		return roomySidebar
	case l.needs(closeRail)+empty+list <= room:
		return closeRail
	case l.needs(shortRail)+empty+line <= room:
		return shortRail
	}
	return FullSidebar
}

// Layout sets the parts.
func (l sidebarParts) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	head, trucks, empty, list, line := l.parts(objects)
	top, none := head.MinSize().Height, float32(0)
	if empty.Visible() {
		none = empty.MinSize().Height
	}
	at := l.choose(size.Height-top, none, list.MinSize().Height, line.MinSize().Height)
	l.sidebar.Setting = at
	for i := range l.sidebar.Trucks.Objects {
		l.sidebar.Card(i).Shorten(at != roomySidebar)
	}
	listed := at == roomySidebar || at == closeRail
	SetVisible(list, listed)
	SetVisible(line, !listed)
	foot := line
	if listed {
		foot = list
	}
	low := foot.MinSize().Height
	Put(head, 0, 0, size.Width, top)
	Put(trucks, 0, top, size.Width, size.Height-top-low)
	Put(empty, 0, top, size.Width, none)
	Put(foot, 0, size.Height-low, size.Width, low)
}
