"""A pond in a storm: how much it holds, what comes, what soaks away and what runs over.

Decided here:

- The pond soaks over the area under water; through the floor alone is told as the long end.
"""
