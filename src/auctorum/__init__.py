"""auctorum: what each author wrote about a plant name.

This package root stays empty on purpose: no module imports it, so no knot of imports can form.
"""
