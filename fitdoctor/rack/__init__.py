"""At the rack: the same chain with few answers; buy, buy only if, or leave it."""
