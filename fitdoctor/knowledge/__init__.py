"""The knowledge: records, reading, checking, graph, search."""
