"""The static site: page contexts, pictures, rendering, writing and a loopback server."""
