"""The screens of the interview: thin views of the answers and the plan."""
