"""Ranks in order, with the connecting terms that literature prints for them (ICN Art. 3-5, Rec. 5A)."""
