package view

import "fyne.io/fyne/v2/widget"

// highImportance marks the way on.
const highImportance = widget.HighImportance
