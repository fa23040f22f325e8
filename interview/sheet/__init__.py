"""What is printed: the plan, the yard card, the worksheet, the figures, the check."""
