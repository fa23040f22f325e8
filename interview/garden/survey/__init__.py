"""What drains here: pacing, pieces, surfaces, shares, runoff."""
