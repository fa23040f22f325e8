"""The planting: wetness, the plant list, choosing, swaps, care.

Decided here:

- One's own plant file is a box where the packaged list has no plants, and else a further row.
- A floor or a side wet for less than 6 h in the storm held is planted as the rim is, the floor by
  the plants of any part, the side by those of side and rim, unless its worst case is longer than
  plants of wet and dry ground stand. Those that stand drought badly come later there.
- Plants are counted on what is planted: inside the crest and the cut edge, as it is mulched, and
  on the outside of the berm only where that is wished. Without an answer each kind stands at the
  distance the list gives it, as in version 0.1; a size has a distance for all its kinds but
  shrubs.
- The price of a plant is that of the size that is planted: of another size the plan tells below
  which price it costs less.
- A fact of the plant list rests on what its column ``rests_on`` names for it, by the codes of
  ``planting/plant_sources``, where the rules of taking over stand; a fact not named there is from
  memory. What was decided by hand is a row of ``plant_decisions.csv``, held against the list.
- A hazard that one list alone carries (``HAZARDS`` in ``planting/provenance``) is told as that. A
  kind that any source calls toxic is marked so, or why not is a row of ``plant_decisions.csv``.
- What spreads hard is planted only where it is asked for by name, and what a state's list of
  weeds names is offered in that state to nobody.
- A plant whose roots stand no air is given a day under water, one that stands it badly two, but
  where a published table puts it into that zone.
- Where too few kinds suit a zone plants for part sun stand in for shade, and then those whose
  warmest hardiness zone, from memory, is the next colder one; each says so (``makeshift``).
- A stand-in carries no warning, is regulated nowhere, and is near in height and months wherever
  the list has one that is; how it differs is told.
- Seed is bought by weight, from the thinnest to the thickest published rate; that of the packet
  goes first. A ton is 2000 lb and a tonne 1000 kg, whatever the country.
- A plant is chosen for the hours of the storm held and must live through the worst case: the same
  storm again next day, and the longest wet spell of the record. A worst case over 72 hours is
  told, and rules out none of the plants that stand the longest.
- A swap changes one place. The planting is chosen as if nothing had been swapped; then each swap,
  in the order written, puts another plant in that place with a count of its own.
"""
