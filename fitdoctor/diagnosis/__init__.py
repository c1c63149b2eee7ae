"""From what is seen and answered to causes, and to the next thing worth asking."""
