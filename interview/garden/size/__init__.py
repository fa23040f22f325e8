"""The size: depth, basin and shape.

Decided here:

- Size by lean, usual, generous: usual holds the rain while nothing soaks in; lean, and usual on
  fast soil, is the smallest bed that the routed storm does not fill. Answers go before all three.
- A floor pegged without a word about its shape is the rectangle it was measured as. Where the
  usual bed was taken before, its shape was shown and is kept with the floor.
- The floor offered for Enter is kept as the words offered, as any answer is.
- A pond over 12 in is wanted first and allowed after; without an engineer's word the plan keeps
  to 12 in.
"""
