"""The job book: each garment that came in, what was thought of it when, what was done, how it came out. Only here is SQLite known."""
