"""What is printed: the plan, the yard card, the worksheet, the figures, the check.

Decided here:

- The figures are one tree (``sheet/figures_file``), written as YAML or JSON. Its keys are in
  ``figures_schema.json``, which every output of every sample is held against; a new key goes into
  it and raises the second number of ``FORMAT_VERSION``. JSON has no infinity: there it is the
  text ``inf``.
- A blank file answers nothing but what was preset; it is written to a new file alone.
- While a stop stands the yard card gives no measures to dig by.
- The printed sheet is HTML with nothing from elsewhere; all its text goes through
  ``sheet/markup``. The garden stands on two pages: ``sheet/page_room`` gives its picture what is
  left. Where the first goes on on another one, that one is filled with what else stands under the
  plants; a long planting takes that along to a third: no page holds the cautions alone. In print
  black lines and marks carry all; no tint takes more than 15 % of an ink.
- The plain sheet is what to take outside; with ``--working`` it is every part. A page written to
  a named file goes over nothing but an earlier page of ours.
- The sheet on the screen is folded to the window; written to a file it has 76 columns.
- Several files are one output of several parts: check and plan under the file's name, figures as
  YAML documents, the table a line each. HTML is one page a document, so ``--output`` is a folder.
  One file's output is as it was, but where ``--output`` is a folder or ends with ``/``. A request
  to end is heard between two files.
- A table has one unit a column: that of the first garden that can be read, said in the head.
- ``--diff`` compares what ``--figures`` writes, unrounded, and so tells no change that it does
  not; of the answers it compares what the words are read as, so that ``0.60 in`` is ``0.6 in``.
- Not finished, for ``--strict``, is a plan that waits for an answer (``summary.waiting``); a
  question whose default is in force is open, and no reason.
"""
