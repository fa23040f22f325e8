"""Afterwards: dig day, levels as dug, first storms, keeping it."""
