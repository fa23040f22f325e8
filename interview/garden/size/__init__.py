"""The size: depth, basin and shape."""
