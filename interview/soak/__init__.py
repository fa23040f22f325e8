"""One soak test at one instant: its state, what is due, its rows and its words."""
