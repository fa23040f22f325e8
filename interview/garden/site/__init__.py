"""The spot: buried lines, distances, slope, surroundings.

Decided here:

- Another spot has another outline: when another one is chosen, the room and the way from the
  downspout are taken out of the answers and offered for Enter, from ``half_typed``; the nearest
  mark is taken away, told before, and measured anew. They are asked at once
  (``Walk._asked_anew``).
- The test hole is held against the day it is dug. Marks that go stale later do not shut its
  readings.
- A hole dug with all lines clear stays open when new marks are asked for. While the request is
  the one it was dug under, the answers about it decide, and ``hole_cleared`` is noted with the
  ticket or taken back with them; once a later request replaces it, the note stands. Where there
  is none, as in a file of version 0.1 whose marks were renewed, nothing tells a renewed request
  from a hole dug before the first one: the person is asked once, and no or don't know keeps it
  shut.
- A later request takes the answers about the old marks away, told before: every owner has to
  answer anew, and the nearest mark is measured anew.
- A day named for a hole that has no depth keeps nobody out: where that day was shut and today is
  open, the hole is dug today, and its day becomes today with its depth. No day is taken while no
  day up to now was open.
- Polluted ground shuts a hole until its timed test has begun: what was measured stays open.
- The strip beside a mark is one function of state, country and units; the gate, the sheet, the
  card and the cautions of the questions all ask it. A rule in inches is never shortened in
  metric.
- What a state asks for about the lines is ``garden/site/locating.csv``, as read, each part with
  its standing; ``garden/site/locating`` makes the defaults of it. Never fewer than 3 business
  days nor under 24 in; the day of the request never counts; the marks are counted from the
  request, for the shortest time that a text of the state gives, and for more than two weeks only
  where that was read at the source. A wait that differs within the state has no default. A ticket
  goes first.
- Holidays in the wait are worked out for the United States (federal ones alone) and asked for
  elsewhere; until they are known there is no first day. Assumed ones make no mark last longer.
- A line on a plan counts as a mark where the owners of lines give plans and mark nothing.
- Room, distances and trees are held against toe to toe. Where that lies within the room that was
  laid out, distances stand as measured; else what reaches beyond is taken off.
- Levels are read from one string at the crest, or at the lawn where that is the rim.
"""
