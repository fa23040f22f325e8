"""Quantities, how they are written, where numbers come from, and errors carried.

Decided here:

- One length is written in one way in every table, finding and drawing (``shown.length_words``); a
  measured distance is rounded down, so that it never seems farther than it is.
"""
