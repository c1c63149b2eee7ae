"""The place At the rack: one question at a time, and what buying comes to."""
