"""The full-screen interview: the only part that knows Textual.

Decided here:

- A second on the timing page repaints the clock and, where it moves by an eighth of a cell, the
  bar; words are gone over each minute, the pictures where the level moves by an eighth of a row.
- While a key, a picture or the plan so far is on its way to be seen the sums beside the keys wait,
  between two of their parts (``FramedApp.paint_first``): taking turns with them a paint took twice
  as long, and after one of more than a sixtieth of a second Textual leaves the next frame out.
- How far a sum is is said only where it takes long enough to be read: each such line has the page
  laid out twice.
- A desktop notification is sent only to a terminal known to take one (OSC 9, 99 or 777), never
  through tmux or screen. How to be reminded is the person's choice and lies in the configuration
  folder, not in a garden's file.
- Of each paint only the cells that differ are written (``screens/sent``): Textual paints a page
  several times while it is turned. All is written anew at another size, at F2, and back from a
  stop.
- No row of a list has colors of its own: on the row that is chosen they would be unreadable.
- A page turn styles anew only the parts whose style hangs on how the page is laid out
  (``question_room.LAID_OUT``); Textual would style all of it, which took a third of a turn.
- Before a finished garden answers its first key each of its answers is read and held against the
  others, for a fault is told at once. That takes quantities, so that Pint is loaded until then: a
  sixth of that start. The questions' own modules are another third, Textual most of the rest.
- The frame of a page (``screens/page``) holds what every page has: where one is, the stages, what
  is said, the keys. Nothing lies over a page; a notice goes with the next key, a warning with
  Enter.
- A key stands in ``screens/keys`` or on no page: a letter means one thing everywhere, and what
  the key line shows is what may be clicked. There is no second row of buttons.
- Colors are by meaning (``screens/palette``), a table for each depth of terminal, none mixed or
  rounded; a mark and a word say the same.
- What a page tells is led by its first line; a verdict in it stands on a badge, a caution is marked
  as every caution. Figures, areas and answers stand under each other where there is room.
- A list of choices shows where one is from the start, hollow: Enter alone takes nothing that was
  not marked, for a safety question has no default.
"""
