"""Drawings as plain geometry, shown as terminal cells or as SVG."""
