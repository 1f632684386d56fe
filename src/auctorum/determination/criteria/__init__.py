"""Working criteria: plants judged by them, and criteria proposed from the records."""
