"""The place: units shown, country, state, and the rain to hold.

Decided here:

- The state alone is asked of a garden in the US: it brings the country and its units with it.
  ``no`` opens both, and goes again once a country is named, so that no file keeps it. A file that
  names another country is asked for no state.
- The usual rain is what was read for the state (``place/rain_depths.csv``), else the custom of 1
  in. A published percentile, what a rule asks, what a manual advises, the custom and a depth of
  one's own file have each their own words. Unanswered, it follows the state; a floor pegged
  without a word about it was pegged for the custom, as in version 0.1, and one pegged now keeps
  the depth it was shown.
- The hardiness zone offered is that of most ZIP codes of the state; it is no default, so that no
  plant is left out by it before Enter.
"""
