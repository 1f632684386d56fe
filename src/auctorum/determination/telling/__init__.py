"""One determination told to a person: in words, by every authority, and by being asked."""
