"""The arithmetic of counting plants: gaps, intervals, thresholds, and who measures otherwise."""
