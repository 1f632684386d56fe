"""Which name is this misspelt label: normalise, index, compare, decide."""
