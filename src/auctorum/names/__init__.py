"""What a name says: its parts, ranks and authors, read from words and written back."""
