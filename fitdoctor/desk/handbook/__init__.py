"""Look it up: the handbook in the window."""
