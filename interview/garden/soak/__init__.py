"""The soak test: the hole, its run, its rates, and what they mean.

Decided here:

- A hole is of the spot it was dug at (``hole_spot``, noted where another spot is chosen):
  elsewhere it does not count, and another is asked for. Without a note, as in version 0.1, it is
  at the one chosen.
- The state of a soak test is a function of the noted instants and the time now: nothing is
  counted up, and stored times are read without a clock, so a clock set back hides nothing.
- The water between two readings (``soak/water_level``) is an estimate: it falls on at the rate of
  the last reading, is called so wherever it is drawn, and is in no table and no rate.
- Of several holes the slower of two or the middle of more governs; one set aside is shown with
  its reason and not used.
- The whole wall counts in the corrected rate; the reduction-factor form, which counts half of it
  and gives up to twice the rate, is not used.
- One verdict on the soil, from the rate that allows the shallower pond; the doubt that the feel
  of the soil casts on it stands beside it.
- One verdict on whether a rate has settled (``Trend``): the last three within 10 %, or the last
  six no further apart than the ruler can tell.
- Two depth checks: drop in the hole over 24 hours, corrected rate over 48; strict and custom are
  choices.
- Drop rate is the mean over the readings of drop since the fill by time since the fill, as custom
  has it.
- The depth by the drop goes by the lower of that and of all the drop over all the time, as soil
  slows while it wets; both are told. So does the verdict on the soil.
- Soil under the least pond is told with one sentence (``NO_POND_HERE``) wherever it is told, and
  asks for nothing more.
- A rate of a test is written with two digits, rounded down, wherever it is met; the rates of a
  single reading with three.
- Times noted while the clock was ahead stand until they are shifted; only a new time that is
  still to come is refused.
"""
