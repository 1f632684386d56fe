"""Acts in the literature -> graph of names -> their standing and history."""
