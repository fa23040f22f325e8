"""The form of the garden: its outline, its sides, how it lies in the ground, what is dug.

Decided here:

- The garden is that which is built: volume, area and hours are of the finished surface; mulch and
  compost are dug out below it, mulch up to a step cut at the rim, so no edging is bought. Where
  seed is sown on the rim no mulch lies there, and the step is at the full pond
  (``size/cover_questions``: what covers the ground is asked with the plants, and decides what is
  dug). A lean rim is turfed there.
- One outline (``form/outline``) gives area, volume, storms, footprint and soil: rays square to
  the floor's edge, each with the width of its strip; a line ``q`` outside the floor has the area
  ``A + P q + k q^2``.
- How deep the floor lies (``form/lie``): on lawn that falls under 1 % the lawn is the rim; else
  the deepest of the crest uphill, the soil of the berm, and a berm of 12 in (300 mm). No berm
  uphill.
- Pegs are told by stations along one string on the contour, offset to both sides, one number
  where both are alike and one row where stations are; the rim is the crest, uphill the edge of
  the cut. The card has the sheet's table, with fewer stations where its page is full.
"""
