"""The soak test: the hole, its run, its rates, and what they mean."""
