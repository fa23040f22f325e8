"""The earth: digging, berm, overflow, materials, costs, pegging out."""
