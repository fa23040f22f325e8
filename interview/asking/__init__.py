"""An interview about anything: questions as data, answers, the way through them.

Decided here:

- The words typed are the answer. ``1/3 in`` never drifts; a new pace changes every paced length.
- Nothing is taken but by Enter, and a key pressed before its question was shown, or in one run
  with the Enter before it, is left out (``typed_ahead``); the time is that of the key event.
- An answer beside which a kept one cannot be is doubted when it is given, whatever the pair
  (``route.made_unfit``). Given again it is kept, and the other is asked for anew.
- What is half typed is no answer: it is kept apart, under ``half_typed``, and decides nothing.
  It is saved once no key has come for a second (``screens/resting``).
- Taking a usual page stores its name, under ``usual_taken``, and no answer: its defaults stay in
  force, follow later answers and are listed as assumed. What is only offered, and is no default,
  is kept as words. ``, not KEY`` after a name is a row that came onto the page since: for it
  alone the page comes back. The number of the file's version stays: a program of version 0.1
  tells of the name, keeps it, and asks those questions.
- A question that may be skipped (``OPTIONAL``) is put once; an empty Enter keeps don't know yet.
  It is in no list of what is open.
- A safety question is never offered (``SAFETY``), though the plan may count on the careful
  default until it is answered.
- The boxes of a page are kept together or not at all; where one opens another that had not been
  put, what was given is kept and the page stays.
- A page stands at its boxes before its rows, though all of them may be skipped: Enter at a row
  takes the page whole.
- A visit that is shut is shown once, with its reasons, and then passed.
- Whether every question is a page of its own is a matter of the sitting and is not kept.
- None of these is chosen, never left unticked, on the screen and on plain lines, where nothing is
  usual. An empty list in a file is no answer: a script that was told nothing writes one too.
- A list in a file may be one text with commas, and words parted by commas a list
  (``Question.parted``, ``file_form.answer_of``). Commas part only a list that is refused without,
  and one in brackets that YAML cut within its items; one without a space may be a decimal comma.
  Names of plants are parted in a text alone, never in an item. How it was written by hand stays
  in the file.
- Defaults count until there is an answer; the plan lists each as assumed. Safety questions have
  none.
- Each line of a list is kept as soon as it is added; ``stopped_at`` then says ``unfinished``, so
  that the list is asked again. In the plain lines a request to end is heard between two lines, a
  line is added to those kept, and one that is refused costs no other.
- Whoever stops at a question gone to comes back to it: ``stopped_at`` then says ``looked at``. A
  question that waits for its answer is come back to without that.
- A choice in two steps (``InSteps``) has one key: both steps make one of its options. A number is
  that of the step on the screen and on plain lines, and of the whole list in a file, as ever.
- A fault of the program keeps one part of a page back, which says so in its place
  (``own_fault``); the rest is given, the head warns, the exit status is 70. A safety check that
  failed counts as a stop. In the tests every fault comes out.
"""
