"""Drawings as plain geometry, shown as terminal cells or as SVG.

Decided here:

- A part that drains here is drawn as a bar that says how much: the answers never say which part
  of the roof it is. Only what drains here whole is shaded.
"""
