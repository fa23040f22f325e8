"""The arithmetic of a rain garden: pure functions of quantities, with no screen, file or clock."""
