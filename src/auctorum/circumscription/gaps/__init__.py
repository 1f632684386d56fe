"""Open questions of a knowledge base, each a frozen value, ranked by how much an answer would change."""
