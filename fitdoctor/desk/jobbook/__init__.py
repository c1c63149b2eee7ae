"""The place Job book: every garment that came in, how it stands, how it came out, and what that taught."""
