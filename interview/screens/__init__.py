"""The full-screen interview: the only part that knows Textual."""
