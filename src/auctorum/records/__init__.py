"""Records: their schema (pure), and the one door to YAML and CSV (read, write)."""
