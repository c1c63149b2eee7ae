"""Practise: exercises in the window, how they went, and sets for a class."""
