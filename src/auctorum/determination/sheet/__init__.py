"""What stands on a sheet for the field."""
