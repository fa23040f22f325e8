"""The garden: one room a subject, in the order of the interview, and the plan over them."""
