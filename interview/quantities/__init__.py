"""Quantities, how they are written, where numbers come from, and errors carried."""
