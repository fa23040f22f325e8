"""Storms and years of rain in the garden.

Decided here:

- The columns of a rain file are boxes of its page where the headings do not tell them
  (``Session.needs``): the one question whose being asked hangs on a file, so it is no condition.
- Rain days are those over 0.1 in; a share of them is no share of the water.
- A day of the record falls as the chosen storm does, and runs off by its own depth.
- A rain of the record is followed step by step only where it may run over, stand into the next day
  or stand the longest (``DayByDay._soaks_away``); of others the volumes alone count, and days
  without rain are passed over.
"""
