"""What a plant is, under whose view, and how sure one can be; how many there are; what a label is worth."""
