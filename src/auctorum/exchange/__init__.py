"""The knowledge base in open formats."""
