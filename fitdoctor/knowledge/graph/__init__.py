"""The knowledge as a graph: every link once as written, and the way back, for the look-up and the map.

Whoever needs it imports it when it is needed: networkx costs a tenth of a second at the start.
"""

from fitdoctor.knowledge.graph.chain import COLUMNS, LEFT_OUT_OF_MAPS, Edge, EntryMap, Key, Node
from fitdoctor.knowledge.graph.links import HEADINGS, EntryGraph, Link, LinkGroup

__all__ = ["COLUMNS", "HEADINGS", "LEFT_OUT_OF_MAPS", "Edge", "EntryGraph", "EntryMap", "Key", "Link", "LinkGroup", "Node"]
