"""Pictures as SVG text, drawn from values alone."""
