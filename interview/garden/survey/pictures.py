"""Small pictures of text shown with the questions on what drains here."""

from __future__ import annotations

PACING_LINE = """\
 stake                                       stake
   |<---------- the line, taped ------------->|
   1 . 2 . 3 . 4 . 5 . 6 . 7  every step, or
       1 . . . 2 . . . 3 . .  every second step"""

FALLS_ON = """\
      ____________
     /   UPPER    \\        rain runs off the upper roof
    /______________\\_._
    |              | .  .  and falls on the lower one:
    |              | ______.__
    |              |/  LOWER  \\ === gutter"""

OUTLETS = """\
   =========== gutter ===========
   |            |               |
   |            |               |
 spout 1     spout 2         spout 3"""

OUTLETS_HERE = """\
   =========== gutter ===========
   |                            |
 spout 1                     spout 2
    \\__                      __/
       \\___  THIS GARDEN  ___/      both come here: 2"""

HIGH_POINT = """\
            high point
   ________----^----______________
  |                               |
 spout A                       spout B
  <- this side -> <- other side ->
  <-------- whole gutter --------->"""

SPOUT_SPLIT = """\
        | spout
        |
     ___|___
    /       \\        half to each: 50 %
  THIS     other
 GARDEN    garden, drain or barrel"""

VALLEY = """\
  from above:
  +-----------------------+
  |       main roof       |
  |-------- ridge --------|
  |        \\       |      |
  +=========\\      |      |   \\ valley: both slopes
  gutter    V\\_____|______|     pour into its foot V
            |  wing       |"""

RIDGE = """\
  from above:              from the side:
  +-------------------+           ridge
  |    other side     |            /\\
  |------ ridge ------|      other/  \\this
  |    THIS SIDE      |      side/    \\side
  +==== gutter =======+         |house |=gutter"""

PERCENT = """\
  +-----------------+
  |  \\   patio      |    a bucket poured at A runs
  |   \\ A --> garden|    here, at B it does not:
  | B  \\            |    about 60 % comes here
  +-----------------+"""

SLOPE_LENGTH = """\
              /|
   along the / |
   slope    /  | rise
           /___|
           level: this is what the rain falls on"""

PIECES = """\
  an L shape is two rectangles:  or one, less a corner:
  +--------+                     +--------+.....
  |   1    |                     |   1          :
  |        +-----+               |        +- - -+
  |        |  2  |               |        | less 2
  +--------+-----+               +--------+-----+"""
