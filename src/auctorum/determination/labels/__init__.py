"""What sellers' labels are worth."""
