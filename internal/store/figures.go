package store

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// outbound is the direction of a load that is only weighed, as the facts have it.
const outbound = "out"

// engineKey stands among the figures of a row, which cannot be read without
// knowing the engine. It is left out for the first engine, so rows written
// before there were others are as they were. No line has this id.
const engineKey = "engine"

// errFigures is a load whose figures are no figures.
var errFigures = errors.New("the figures of a load cannot be read")

// Recorded are the row's figures, to be read by name.
func (r LoadRow) Recorded() settle.Recorded {
	return settle.Recorded{Engine: r.Engine, Weighed: r.Direction == outbound, Lines: r.Figures}
}

// figuresText is the row's figures and their engine as a JSON object of text.
func (r LoadRow) figuresText() (string, error) {
	figures := r.Figures
	if !r.Engine.IsZero() {
		figures = map[string]quantity.Amount{}
		maps.Copy(figures, r.Figures)
		figures[engineKey] = quantity.Int(int64(r.Engine), quantity.Plain)
	}
	text, err := json.Marshal(figures)
	if err != nil {
		return "", fmt.Errorf("the figures of load %s cannot be kept: %w", r.ID, err)
	}
	return string(text), nil
}

// readFigures reads what figuresText wrote.
func (r *LoadRow) readFigures(text string) error {
	if err := json.Unmarshal([]byte(text), &r.Figures); err != nil {
		return fmt.Errorf("%w: load %s: %w", errFigures, r.ID, err)
	}
	r.Engine = settle.First
	number, ok := r.Figures[engineKey]
	if !ok {
		return nil
	}
	delete(r.Figures, engineKey)
	if err := r.Engine.UnmarshalText([]byte(number.Written())); err != nil {
		return fmt.Errorf("%w: load %s: %w", errFigures, r.ID, err)
	}
	return nil
}
