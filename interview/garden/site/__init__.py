"""The spot: buried lines, distances, slope, surroundings."""
