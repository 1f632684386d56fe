"""What a description says: units, ranges, states and the notation they are printed in."""
