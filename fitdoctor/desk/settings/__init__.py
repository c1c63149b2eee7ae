"""The shop's settings in the window."""
