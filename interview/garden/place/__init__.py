"""The place: units shown, country, state, and the rain to hold."""
