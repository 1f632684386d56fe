"""The rules of the Code, one small function each, with its article in the docstring."""
