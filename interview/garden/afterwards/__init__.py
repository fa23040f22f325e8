"""Afterwards: dig day, levels as dug, first storms, keeping it.

Decided here:

- Months of the first year are counted from the day of digging alone; what a season decides is
  told by its frost, of which no dates are held.
- Levels as dug count as differences alone, so any level line will do; read from the string they
  also tell a floor too high from a notch too low. What is held is the planned curve over the mean
  of the floor found, up to the notch or the rim where that is lower. Each further bed has keys of
  its own, with its number; those without one are of the first.
"""
