"""Every record, linked and indexed: what everything below takes."""
