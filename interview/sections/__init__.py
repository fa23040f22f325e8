"""The parts of the sheet, each as lines of plain text."""
