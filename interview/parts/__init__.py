"""From the answers of each stage to its calculations."""
