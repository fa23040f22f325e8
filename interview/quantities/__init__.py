"""Quantities, how they are written, where numbers come from, errors carried, plain records.

Decided here:

- One length is written in one way in every table, finding and drawing (``shown.length_words``); a
  measured distance is rounded down, so that it never seems farther than it is.
"""
