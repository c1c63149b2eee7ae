"""Garments and what shows on them as plain geometry: no Qt here, only shapes to be painted."""
