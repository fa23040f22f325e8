"""Storms and years of rain in the garden."""
