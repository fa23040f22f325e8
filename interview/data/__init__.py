"""Tables the program reads: units, plants and places."""
