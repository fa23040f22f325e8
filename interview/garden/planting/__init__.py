"""The planting: wetness, the plant list, choosing, swaps, care."""
