"""Which traits authors give a taxon: agreement, conflict, silence, and the merged diagnosis."""
