"""The garden: one room a subject, in the order of the interview, and the plan over them.

Decided here:

- The invented garden that the start page opens as a copy is the finished sample itself:
  ``sample_answers/`` is packed into the program as it is, and there is no second one.
- Every reason of the gate holds its ways out (``Bar.ways``): an answer to change, the day on
  which waiting opens it, or whom to call.
- What is due is one function (``due``) of the plan and its time: a smell, a running test, a stop,
  faults, stale marks, then what is open first. Which keys are due when stands in ``due_keys``.
- Whoever comes back stands at what is due, where that is no page that is open: a stop with its
  ways, a shut page, the waiting, stale marks, the first storm (``LEADS``). The full screen shows
  the first open page until the plan is known, and leads on from it where nothing was typed.
- A soak test under way leads: both front ends open at it, and the sheet names it first.
- The size is told in one sentence (``summary.size_sentence``), on every page; the area that is
  recommended stands with its sums alone.
- The first size (``plan.rough``) is the plan's own balance at every depth that is still possible,
  in each way that open answers may have it built, widened by the published size factors. It
  narrows with each answer and holds what the plan comes to where the soil soaks as it feels,
  within the factor of three that the plan doubts; a second range is told for a test that
  contradicts the feel. Its outline, on the slope measured, is offered as the room; its figures
  stand until a rate is known.
- The picture beside a question (``garden/live_picture``, by the table in ``garden/scenes``) shows
  what is measured there by the answers and the words typed: dashed where they are open, and
  nothing that was not asked. It is drawn in a thread once typing rests, and gives way where the
  question would not fit beside it.
- A sentence is written once, with American words and with measures as ``2 ft (0.6 m)``;
  ``Answers.told`` puts it into the units and the country of the garden, by ``asking/lands.csv``.
  Names a person gave stand as they were given. Where nothing is held of a country the table says
  so.
- Better and worse are told of what a garden is made for, and of hours, digging and money; of the
  shares of two different storms neither is better. A change is that of the figures as shown.
- A spot that stops a garden shuts the hole until it is dug. The stop is that of the shallowest
  garden: what digging less deep would mend shuts nothing. ``test_to_learn`` opens the hole all
  the same, but not by a bank, a slide, a septic system or a well, nor on polluted ground or
  another's.
"""
