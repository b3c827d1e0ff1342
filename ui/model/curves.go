package model

// Curves is figures against another one as lines, two sets laid over each other. Places are
// thousandths of the width and height.
type Curves struct {
	Title, Empty string
	Curves       []Curve
	Guides       []Guide // lines across, with their values
	Below        []Guide // values below
}

// Curve is one line. The second of a picture is dashed, for it is not told by colour alone.
type Curve struct {
	Name   string
	Dashed bool
	Points []ChartPoint
}
