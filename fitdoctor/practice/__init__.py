"""Exercises made from the knowledge, how they are judged, when they come back, and how it went."""
