"""Where plants grow: what may be told of a site, what habitat it is, and where to look next."""
