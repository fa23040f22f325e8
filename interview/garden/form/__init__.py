"""The form of the garden: its outline, its sides, how it lies in the ground, what is dug."""
