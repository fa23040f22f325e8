"""Afterwards: dig day, first storms, keeping it."""
