"""The parts of the desk, each a widget that asks or shows one thing."""
